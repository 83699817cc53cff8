import { dayMs } from '../simulate/clock.ts'
import type { Labels, MissingRecord, WrongReading } from '../simulate/labels.ts'

/** A doubt as an estimator names it. */
export interface Doubt {
  kind: string
  sump: string
  /** The entry doubted, where there is one. */
  entry: string | null
  entries: string[]
  atMs: number
}

export interface DoubtScore {
  misreads: Found
  wrongSumps: Found
  missing: Found
  instruments: Found
  /** Doubts that no label explains. */
  falseDoubts: number
}

export interface Found {
  found: number
  of: number
}

/** A missing record shows at a later reading: this long after it a doubt of its family still counts as it. */
export const shownWithinDays = 15
/** An estimator may date it as far before. */
export const datedBeforeDays = 4

const ofReadings = new Set(['misread', 'wrong-sump'])
const ofRecords = new Set([
  'unlogged-addition',
  'unlogged-water',
  'unlogged-concentrate',
  'unlogged-drawoff',
  'unlogged-charge',
  'leak-in',
])

const names = ({ entry, entries }: Doubt, id: string) => entry === id || entries.includes(id)

const findsReading = (doubt: Doubt, { entry }: WrongReading) => ofReadings.has(doubt.kind) && names(doubt, entry)

const findsRecord = ({ kind, sump, atMs }: Doubt, missing: MissingRecord) =>
  ofRecords.has(kind) &&
  sump === missing.sump &&
  atMs >= missing.atMs - datedBeforeDays * dayMs &&
  atMs <= missing.atMs + shownWithinDays * dayMs

const findsInstrument = (doubt: Doubt, { entries }: Labels['instrumentsOff'][number]) =>
  doubt.kind === 'instrument' && entries.some((id) => names(doubt, id))

/**
 * Which of the labelled wrongs were found, and how many doubts were about nothing. A misread is found by a doubt about
 * its own entry that calls it misread or wrong sump. A missing record is found by a doubt about missing records of the
 * same sump from four days before it to fifteen after. A doubt about a labelled wrong is never false, even where it
 * tells another story of it: a wrong reading taken for an unlogged pour counts as not found, but not as false.
 */
export function scoreDoubts(doubts: readonly Doubt[], labels: Labels): DoubtScore {
  const { wrongReadings, missing, instrumentsOff } = labels
  const found = <T>(wrongs: readonly T[], finds: (doubt: Doubt, wrong: T) => boolean): Found => ({
    found: wrongs.filter((wrong) => doubts.some((doubt) => finds(doubt, wrong))).length,
    of: wrongs.length,
  })
  const isExplained = (doubt: Doubt) =>
    wrongReadings.some(({ entry }) => names(doubt, entry)) ||
    instrumentsOff.some(({ entries }) => entries.some((id) => names(doubt, id))) ||
    missing.some((wrong) => findsRecord({ ...doubt, kind: 'unlogged-addition' }, wrong))
  return {
    misreads: found(
      wrongReadings.filter(({ kind }) => kind === 'misread'),
      findsReading,
    ),
    wrongSumps: found(
      wrongReadings.filter(({ kind }) => kind === 'wrong-sump'),
      findsReading,
    ),
    missing: found(missing, findsRecord),
    instruments: found(instrumentsOff, findsInstrument),
    falseDoubts: doubts.filter((doubt) => !isExplained(doubt)).length,
  }
}
