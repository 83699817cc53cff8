import { causes } from './causes/index.ts'
import { type NextCheck, nextChecks } from './next-checks.ts'
import { type Found, infer } from './noisy-or.ts'
import { findingNumber, tables } from './tables.ts'

/** A test that was not made yet, and how much it would tell. */
export interface TellingCheck extends NextCheck {
  /** Bits it is expected to tell of the causes in question, summed over them. */
  gain: number
}

/** What tells less than this is not worth the walk: common practice, no source. */
const worthWalking = 0.02
/** Present findings that are weighed for it; the work doubles with each. */
const weighedAtOnce = 6

/**
 * The test that is expected to tell most about the causes in question, among those not made: the mutual information of its
 * outcome and each of them, summed,
 *
 *     gain = Σ causes Σ outcomes Σ there, not there  P(o, c) × log2( P(o, c) / (P(o) × P(c)) )
 *
 * A test of several findings is looked at in their order: the first that is there is its outcome. Null where none tells
 * 0.02 bit. Each joint probability is exact; of causes that exclude each other the sum counts the same bit twice.
 *
 * Of the findings that are there the first six are weighed: a choice among tests need not be finer.
 *
 * Source: T. Cover and J. Thomas, Elements of Information Theory, chapter 2, from memory.
 *
 * @param about numbers of the causes in question
 */
export function mostTelling(all: Found, about: readonly number[]): TellingCheck | null {
  const known = new Set([...all.present, ...all.absent])
  const found = { present: all.present.slice(0, weighedAtOnce), absent: all.absent }
  const now = infer(tables, found)
  let best: TellingCheck | null = null
  for (const check of nextChecks) {
    const open = check.findings.map(findingNumber).filter((finding) => !known.has(finding) && tellsOf(finding, about))
    if (open.length === 0) continue
    const gain = gainOf(found, open, now, about)
    if (gain >= worthWalking && gain > (best?.gain ?? 0) + 1e-9) best = { ...check, gain }
  }
  return best
}

const tellsOf = (finding: number, about: readonly number[]) =>
  about.some((cause) => tables.links[cause]!.some((link) => link.finding === finding))

function gainOf(
  found: Found,
  open: readonly number[],
  now: ReturnType<typeof infer>,
  about: readonly number[],
): number {
  let left = now
  let bits = 0
  const add = ({ evidence, joint }: ReturnType<typeof infer>) => {
    const outcome = evidence / now.evidence
    for (const cause of about) {
      const prior = now.joint[cause]! / now.evidence
      const both = joint[cause]! / now.evidence
      bits += term(both, outcome * prior) + term(outcome - both, outcome * (1 - prior))
    }
  }
  for (let n = 1; n <= open.length; n += 1) {
    const without = infer(tables, { ...found, absent: [...found.absent, ...open.slice(0, n)] })
    add({
      evidence: left.evidence - without.evidence,
      joint: left.joint.map((value, cause) => value - without.joint[cause]!),
    })
    left = without
  }
  add(left)
  return bits
}

const term = (both: number, apart: number) => (both > 0 && apart > 0 ? both * Math.log2(both / apart) : 0)

/** Numbers of causes by their words, for tests and callers that name them. */
export const causeNumber = (id: string): number => causes.findIndex((cause) => cause.id === id)
