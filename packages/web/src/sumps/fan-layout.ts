import type { Fan, HistoryEntry } from '../api/types.ts'
import { type Axis, axisOf } from '../drawing/scale.ts'

/** A day of a fan. */
export interface FanDay extends Fan {
  /** Milliseconds since 1970. */
  at: number
}

/** A reading on the drawing. */
export interface Mark {
  entry: string
  /** Milliseconds since 1970. */
  at: number
  value: number
  /** Of a strip's class: between its ends, as far as it has them. */
  span: { low: number; high: number } | null
  isWithdrawn: boolean
  /** Its record does not fit the others. */
  isInDoubt: boolean
}

const day = 86_400_000
/** Without a record for longer than this nothing is drawn: nobody knows what lay between. */
const gapDays = 21

/** The days of a fan in runs: a gap of three weeks without a record is left as a gap, and a charge begins another run. */
export function runsOf(
  days: readonly FanDay[],
  { records, charges }: { records: readonly number[]; charges: readonly number[] },
): FanDay[][] {
  const rising = records.toSorted((a, b) => a - b)
  const begun = charges.toSorted((a, b) => a - b)
  const runs: FanDay[][] = []
  let open: FanDay[] = []
  // Days, records and charges all rise: each list is walked once, however many years there are.
  let [record, charge] = [0, 0]
  const close = () => {
    if (open.length > 0) runs.push(open)
    open = []
  }
  for (const one of days) {
    while (record < rising.length && rising[record]! <= one.at) record += 1
    const isFresh = charge < begun.length && begun[charge]! <= one.at
    while (charge < begun.length && begun[charge]! <= one.at) charge += 1
    if (isFresh) close()
    const [before, after] = [rising[record - 1], rising[record]]
    const isGap = before !== undefined && after !== undefined && after - before > gapDays * day
    if (isGap) close()
    else open.push(one)
  }
  close()
  return runs
}

/**
 * A run with no more days than can be told apart: neighbours together, so that none of their peaks is lost. The fan reaches from the lowest to the
 * highest of them, the middle is their mean.
 *
 * @param most days, from 3
 */
export function thinned(run: readonly FanDay[], most: number): readonly FanDay[] {
  if (run.length <= most) return run
  const [first, last] = [run[0]!, run.at(-1)!]
  const inner = run.slice(1, -1)
  const size = Math.ceil(inner.length / Math.max(1, most - 2))
  const groups = Array.from({ length: Math.ceil(inner.length / size) }, (_, n) =>
    together(inner.slice(n * size, (n + 1) * size)),
  )
  return [first, ...groups, last]
}

function together(days: readonly FanDay[]): FanDay {
  const mean = (of: (day: FanDay) => number) => days.reduce((sum, one) => sum + of(one), 0) / days.length
  return {
    at: mean(({ at }) => at),
    mean: mean((one) => one.mean),
    low90: Math.min(...days.map(({ low90 }) => low90)),
    high90: Math.max(...days.map(({ high90 }) => high90)),
    low50: Math.min(...days.map(({ low50 }) => low50)),
    high50: Math.max(...days.map(({ high50 }) => high50)),
  }
}

/** An outline of a fan: along its upper ends and back along its lower ones; empty for a single day. */
export function outlineOf(
  run: readonly FanDay[],
  ends: 'low90' | 'low50',
  place: { x(at: number): number; y(value: number): number },
): string {
  if (run.length < 2) return ''
  const high = ends === 'low90' ? 'high90' : 'high50'
  const points = [
    ...run.map((one) => `${place.x(one.at).toFixed(1)} ${place.y(one[high]).toFixed(1)}`),
    ...run.toReversed().map((one) => `${place.x(one.at).toFixed(1)} ${place.y(one[ends]).toFixed(1)}`),
  ]
  return `M${points.join('L')}Z`
}

/** The middle of a fan. */
export const middleOf = (run: readonly FanDay[], place: { x(at: number): number; y(value: number): number }): string =>
  run.length < 2
    ? ''
    : `M${run.map((one) => `${place.x(one.at).toFixed(1)} ${place.y(one.mean).toFixed(1)}`).join('L')}`

/**
 * The scale of a drawing: what was read and where it stood, its limits, and the days ahead as far as they stay within reach of them.
 * A fan ahead may run off the drawing, so that the past stays readable.
 */
export function scaleOf({
  past,
  ahead,
  marks,
  limits,
  zero = false,
}: {
  past: readonly Fan[]
  ahead: readonly Fan[]
  marks: readonly { value: number }[]
  limits: readonly number[]
  /** Whether the scale begins at 0. */
  zero?: boolean
}): Axis {
  const known = [...past.flatMap(({ low90, high90 }) => [low90, high90]), ...marks.map(({ value }) => value), ...limits]
  const [low, high] = known.length === 0 ? [0, 1] : [Math.min(...known), Math.max(...known)]
  const room = 0.35 * (high - low || Math.abs(high) || 1)
  const held = (value: number) => Math.max(low - room, Math.min(high + room, value))
  const coming = ahead.flatMap(({ low90, high90 }) => [held(low90), held(high90)])
  return axisOf(
    [...known, ...coming].map((value) => Math.max(0, value)),
    { most: 6, zero },
  )
}

/** What one entry says of a quantity: a figure, or a class with its middle. */
export interface Said {
  value: number
  span: { low: number; high: number } | null
}

/** A class without a lower end begins at 0; one without an upper end is drawn as the figure it is at least. */
export function hardnessSaid({ hardness, hardnessClass }: HistoryEntry): Said | null {
  if (hardness !== null) return { value: hardness, span: null }
  if (hardnessClass === null) return null
  const { low, high } = hardnessClass
  if (high === null) return low === null ? null : { value: low, span: null }
  return { value: ((low ?? 0) + high) / 2, span: { low: low ?? 0, high } }
}

/** What was read of one quantity, for marks. */
export function marksOf(
  history: readonly HistoryEntry[],
  { said, doubted, from }: { said(entry: HistoryEntry): Said | null; doubted: ReadonlySet<string>; from: number },
): Mark[] {
  return history.flatMap((entry) => {
    const [at, found] = [Date.parse(entry.at), said(entry)]
    if (found === null || at < from) return []
    return [{ entry: entry.entry, at, ...found, isWithdrawn: entry.withdrawn, isInDoubt: doubted.has(entry.entry) }]
  })
}

/** When entries of some kinds were made and stand, in milliseconds since 1970. */
export const timesOf = (history: readonly HistoryEntry[], kinds: readonly string[], from: number): number[] =>
  history
    .filter(({ kind, withdrawn, at }) => kinds.includes(kind) && !withdrawn && Date.parse(at) >= from)
    .map(({ at }) => Date.parse(at))
