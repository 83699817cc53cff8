import { type RinseSigns, type RinseVerdict, rinseVerdict, say, sayRinseFaults, slideVerdict } from '@sumpbook/fluid'
import { utc } from '../journal/order.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import { compareEntries } from './in-order.ts'
import type { JobState, JobStep, PlannedStep, SheetKind, Signed } from './job-types.ts'
import { type MadeSheet, makeSheet, type SheetParts } from './make-sheet.ts'

type Signoff = EntryOf<'signoff'>

/** What a job's entries come to. */
export interface FoldedJob {
  id: string
  sheet: SheetKind
  state: JobState
  opened: Signoff
  made: MadeSheet | null
  steps: JobStep[]
  nextStep: JobStep | null
  /** UTC text of the fresh charge's sign-off; null before it. */
  chargedAt: string | null
  endedAt: string | null
  strays: (Signed & { step: string })[]
}

/** What the figures of a step are judged by. */
export interface JudgedBy {
  /** CFU/mL, by the sump's limits or the guidance chosen; null where nobody set one. */
  bacteria: number | null
}

/**
 * A job out of the entries that name it, the opening among them, in whatever order they arrived. The first signature of a step in time order
 * counts (of a look or a slide the first that settles it); later ones are kept beside it. A rinse that is not accepted puts another rinse and another look behind it, with the quantities that
 * follow from that. Nothing is refused: a signature out of turn counts, and one of a step that the sheet does not have is a stray.
 */
export function foldJob(
  opened: Signoff,
  signoffs: readonly Signoff[],
  { sheet, judgedBy, ...parts }: SheetParts & { sheet: SheetKind; judgedBy: JudgedBy },
): FoldedJob {
  const inOrder = signoffs.filter(({ id }) => id !== opened.id).toSorted(compareEntries)
  const signatures = Map.groupBy(inOrder.map(signedOf), ({ step }) => step)
  const givenUp = signatures.get('given-up')?.[0] ?? null
  let made: MadeSheet | null = null
  let steps: JobStep[] = []
  for (let again = 0; ; again += 1) {
    made = makeSheet(sheet, opened.values ?? {}, parts, again)
    steps = withLooks(made?.steps ?? [], again).map((step) => jobStep(step, signatures.get(step.id) ?? [], judgedBy))
    const looks = steps.filter(({ id }) => isLook(id))
    if (again === mostAgain || looks.at(-1)?.verdict?.accepted !== false) break
  }
  const known = new Set([...steps.map(({ id }) => id), 'given-up'])
  const nextStep = givenUp === null ? (steps.find(({ isDone }) => !isDone) ?? null) : null
  const state = stateOf({ steps, nextStep, givenUp: givenUp !== null, sheet })
  const times = steps.flatMap(({ signed }) => (signed === null ? [] : [signed.at])).sort()
  return {
    id: opened.id,
    sheet,
    state,
    opened,
    made,
    steps,
    nextStep,
    chargedAt: steps.find(({ id }) => id === 'charge')?.signed?.at ?? null,
    endedAt: givenUp?.at ?? (state === 'done' ? (times.at(-1) ?? null) : null),
    strays: [...signatures.values()].flat().filter(({ step }) => !known.has(step)),
  }
}

/** More rinses than anybody makes; beyond them something else is wrong. */
const mostAgain = 10

const isLook = (id: string) => /^rinse-check(-\d+)?$/.test(id)

/** A look behind the rinses that were planned, and one behind each that had to be made again. */
function withLooks(steps: readonly PlannedStep[], again: number): PlannedStep[] {
  const look = steps.find(({ id }) => id === 'rinse-check')
  if (look === undefined || again === 0) return [...steps]
  const rinses = steps.filter(({ id }) => /^rinse-\d+$/.test(id))
  const first = rinses[rinses.length - again]!
  const extra = rinses.slice(-again)
  const before = steps.slice(0, steps.indexOf(first))
  const between = steps.slice(steps.indexOf(rinses.at(-1)!) + 1, steps.indexOf(look))
  const behind = extra.flatMap((rinse, n) => [rinse, { ...look, id: `rinse-check-${n + 2}` }])
  return [...before, ...between, look, ...behind, ...steps.slice(steps.indexOf(look) + 1)]
}

function signedOf({ id, at, by, step = '', values = {}, note }: Signoff): Signed & { step: string } {
  return { step, entry: id, at: utc(at), by: by ?? null, values, note: note ?? null }
}

function jobStep(
  planned: PlannedStep,
  signatures: readonly (Signed & { step: string })[],
  judgedBy: JudgedBy,
): JobStep {
  const judged = signatures.map(({ step: _, ...signed }) => ({
    signed,
    verdict: verdictOf(planned.id, signed.values, judgedBy),
  }))
  const counts = judged.find(isComplete) ?? judged.at(-1)
  const again = counts === undefined ? [] : judged.slice(judged.indexOf(counts) + 1).map(({ signed }) => signed)
  return {
    ...planned,
    signed: counts?.signed ?? null,
    again,
    isDone: counts !== undefined && isComplete(counts),
    verdict: counts?.verdict ?? null,
  }
}

/** A signature whose figure is missing, or leaves it open, waits for another. */
const isComplete = ({ verdict }: Pick<JobStep, 'verdict'>) => verdict === null || verdict.accepted !== null

function verdictOf(id: string, values: Record<string, unknown>, { bacteria }: JudgedBy): JobStep['verdict'] {
  if (isLook(id)) return sayRinse(rinseVerdict(rinseSigns(values)))
  if (id !== 'later-slide') return null
  const { low, high } = rangeIn(values.bacteria)
  if (low === null && high === null) return { accepted: null, sentences: [say('The slide has no figure yet.')] }
  if (bacteria === null) {
    return { accepted: true, sentences: [say('The shop has set no limit for a slide: a keeper has looked at it.')] }
  }
  switch (slideVerdict({ low, high, limit: bacteria })) {
    case 'accepted':
      return {
        accepted: true,
        sentences: [say('Under the limit: the cleaning is accepted. It clears no fluid that makes people ill.')],
      }
    case 'unclear':
      return { accepted: null, sentences: [say('The class holds the limit: take another slide in a few days.')] }
    case 'not-accepted':
      return {
        accepted: false,
        sentences: [say('Growth is back: a corner, a hose or a filter was missed. Find it before anything is dosed.')],
      }
  }
}

function sayRinse(verdict: RinseVerdict): NonNullable<JobStep['verdict']> {
  switch (verdict.outcome) {
    case 'charge':
      return { accepted: true, sentences: [say('pH, look and smell let the fresh charge in.')] }
    case 'rinse-again':
      return { accepted: false, sentences: sayRinseFaults(verdict.because) }
    case 'look-first':
      return { accepted: null, sentences: [say('It is accepted on pH, look and smell: one of them is missing.')] }
  }
}

const rinseSigns = ({ freshPh, rinsePh, look, smell }: Record<string, unknown>): RinseSigns => ({
  freshPh: phIn(freshPh),
  rinsePh: phIn(rinsePh),
  look: look === 'clear' || look === 'dirty' ? look : null,
  smell: smell === 'none' || smell === 'smells' ? smell : null,
})

const phIn = (value: unknown): number | null => (typeof value === 'number' && value >= 0 && value <= 14 ? value : null)

/** A count or a class of counts, as readings carry it. */
function rangeIn(value: unknown): { low: number | null; high: number | null } {
  if (typeof value === 'number' && value >= 0) return { low: value, high: value }
  const { low, high, below, atLeast } = (typeof value === 'object' && value !== null ? value : {}) as Record<
    string,
    unknown
  >
  const figure = (one: unknown) => (typeof one === 'number' && one >= 0 ? one : null)
  const range = { low: figure(low) ?? figure(atLeast), high: figure(high) ?? figure(below) }
  return range.low !== null && range.high !== null && range.low > range.high ? { low: null, high: null } : range
}

function stateOf({
  steps,
  nextStep,
  givenUp,
  sheet,
}: {
  steps: readonly JobStep[]
  nextStep: JobStep | null
  givenUp: boolean
  sheet: SheetKind
}): JobState {
  if (givenUp) return 'given-up'
  if (steps.every(({ signed }) => signed === null)) return 'planned'
  if (nextStep === null) return 'done'
  return nextStep.id === 'later-slide' && (sheet === 'cleanout' || sheet === 'change-over') ? 'waiting' : 'open'
}
