import { causes } from './causes/index.ts'
import { type Evidence, evidenceOf, type Symptoms } from './evidence.ts'
import { mostTelling, type TellingCheck } from './most-telling.ts'
import type { Cause, Frequency } from './network.ts'
import { type Found, infer, mostPresent } from './noisy-or.ts'
import type { ReadField } from './readings.ts'
import { circumstances } from './signs.ts'
import { type Stop, stopsFor } from './stops.ts'
import { findingNumber, tables } from './tables.ts'

/** A finding beside how often it goes with a cause. */
export interface CauseReason extends Evidence {
  frequency: Frequency
}

/** A cause with how probable it is, and why. */
export interface RankedCause {
  cause: Cause
  /** 0 to 1; several causes can be there at once, so that these do not add up to 1. */
  probability: number
  /** What speaks for it, most telling first. */
  speaksFor: CauseReason[]
  /** What often goes with it and was looked for in vain. */
  speaksAgainst: CauseReason[]
}

export interface Diagnosis {
  /** Those for which more speaks than circumstances, most probable first. */
  causes: RankedCause[]
  /** None while nobody may go near the sump. */
  nextCheck: TellingCheck | null
  /** What must be done at once, most dangerous first. */
  stops: Stop[]
  /** Readings that have nothing to be held against. */
  unjudged: ReadField[]
  /** Signs beyond the number that can be weighed at once. */
  leftOut: string[]
}

/** So many causes are shown: what is below is hardly worth a thought. */
const mostCauses = 8
const leastProbable = 0.02

/**
 * What may be behind signs and readings. Each cause makes its signs by itself with a coarse frequency (rarely 0.1, sometimes
 * 0.3, often 0.6, nearly always 0.9), signs turn up without any cause now and then, several causes may be there at once; the
 * probabilities follow exactly ({@link infer}). The frequencies are judgements and not counts: take the order, not the digits.
 * One class up or down moves a leading cause by some tenths and seldom changes which three lead.
 *
 * Beyond twelve findings at once, those that tell least are left out and named.
 *
 * @example diagnose({ readings: {}, limits: {}, signs: ['rancid smell', 'grey-black colour'] }).causes[0].cause.id // 'bacterial growth'
 */
export function diagnose(symptoms: Symptoms): Diagnosis {
  const { evidence, unjudged } = evidenceOf(symptoms)
  const present = evidence.filter((one) => one.present).toSorted(byTelling)
  const weighed = present.slice(0, mostPresent)
  const absent = evidence.filter((one) => !one.present)
  const found: Found = {
    present: weighed.map(({ finding }) => findingNumber(finding)),
    absent: absent.map(({ finding }) => findingNumber(finding)),
  }
  const { evidence: all, joint } = infer(tables, found)
  const supported = causes.flatMap((cause, number): (RankedCause & { number: number })[] => {
    const speaksFor = reasons(cause, weighed)
    if (speaksFor.every(({ finding }) => circumstances.includes(finding))) return []
    const speaksAgainst = reasons(cause, absent).filter(
      ({ frequency }) => frequency === 'often' || frequency === 'nearly always',
    )
    return [{ number, cause, probability: Math.min(1, joint[number]! / all), speaksFor, speaksAgainst }]
  })
  const ranked = supported.toSorted((a, b) => b.probability - a.probability || a.number - b.number)
  const stops = stopsFor(present.map(({ finding }) => finding))
  const isAsked = ranked.length > 0 && !stops.some(({ keepAway }) => keepAway)
  return {
    causes: ranked
      .filter(({ probability }, place) => place < mostCauses && (place === 0 || probability >= leastProbable))
      .map(({ number: _, ...ranked }) => ranked),
    nextCheck: isAsked
      ? mostTelling(
          found,
          ranked.map(({ number }) => number),
        )
      : null,
    stops,
    unjudged,
    leftOut: present.slice(mostPresent).map(({ finding }) => finding),
  }
}

const order: readonly Frequency[] = ['nearly always', 'often', 'sometimes', 'rarely']

function reasons({ shows }: Cause, evidence: readonly Evidence[]): CauseReason[] {
  const frequencyOf = new Map<string, Frequency>(shows.map(([finding, frequency]) => [finding, frequency]))
  return evidence
    .flatMap((one): CauseReason[] => {
      const frequency = frequencyOf.get(one.finding)
      return frequency === undefined ? [] : [{ ...one, frequency }]
    })
    .toSorted((a, b) => order.indexOf(a.frequency) - order.indexOf(b.frequency))
}

/** The seldomer something is met without a cause, the more it tells. */
const byTelling = (a: Evidence, b: Evidence) =>
  tables.leaks[findingNumber(a.finding)]! - tables.leaks[findingNumber(b.finding)]! ||
  findingNumber(a.finding) - findingNumber(b.finding)
