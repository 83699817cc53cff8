import type { HistoryEntry } from '../api/types.ts'

/** A reading of strength that stands, on its day. */
export interface Point {
  entry: string
  /** Milliseconds since 1970. */
  at: number
  mean: number
  low90: number
  high90: number
}

/** What a history of concentration shows. */
export interface History {
  points: Point[]
  /** Readings withdrawn, shown apart and never joined. */
  withdrawn: Point[]
  /** Pours, in milliseconds since 1970. */
  additions: number[]
  charges: number[]
  /** Runs of points without a gap or a charge between them. */
  runs: Point[][]
}

const day = 86_400_000
/** Without a reading for longer than this the line is broken: nobody knows what lay between. */
const gapDays = 21

/** The part of a sump's history from an instant on, with its gaps left as gaps. */
export function historyOf(entries: readonly HistoryEntry[], from: number): History {
  const later = entries.filter(({ at }) => Date.parse(at) >= from)
  const readings = later.flatMap(({ entry, at, concentration, withdrawn }) =>
    concentration === null ? [] : [{ entry, at: Date.parse(at), ...concentration, isWithdrawn: withdrawn }],
  )
  const points = readings.filter(({ isWithdrawn }) => !isWithdrawn)
  const times = (kind: string) =>
    later.filter((entry) => entry.kind === kind && !entry.withdrawn).map(({ at }) => Date.parse(at))
  const charges = times('charge')
  return {
    points,
    withdrawn: readings.filter(({ isWithdrawn }) => isWithdrawn),
    additions: times('addition'),
    charges,
    runs: runsOf(points, charges),
  }
}

function runsOf(points: readonly Point[], charges: readonly number[]): Point[][] {
  const runs: Point[][] = []
  for (const point of points) {
    const last = runs.at(-1)?.at(-1)
    const isJoined =
      last !== undefined &&
      point.at - last.at <= gapDays * day &&
      !charges.some((charge) => charge > last.at && charge <= point.at)
    if (isJoined) runs.at(-1)!.push(point)
    else runs.push([point])
  }
  return runs
}

/** The ends of the scale of concentration: what stands and the band, with a little air, in whole steps. What was set aside does not stretch it. */
export function scaleOf(
  { points }: Pick<History, 'points'>,
  band: { low: number; high: number } | null,
): { from: number; to: number; step: number } {
  const values = points.flatMap(({ mean, low90, high90 }) => [mean, low90, high90])
  const all = band === null ? values : [...values, band.low, band.high]
  if (all.length === 0) return { from: 0, to: 10, step: 2 }
  const [low, high] = [Math.min(...all), Math.max(...all)]
  const step = [0.5, 1, 2, 5, 10, 20].find((candidate) => (high - low) / candidate <= 6) ?? 50
  return { from: Math.max(0, Math.floor(low / step - 0.3) * step), to: Math.ceil(high / step + 0.3) * step, step }
}

/** Firsts of months, or every so many of them where there is no room for each. */
export function monthTicks(from: number, to: number, most: number): number[] {
  const first = new Date(from)
  const months: number[] = []
  for (
    let month = new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1, 1));
    month.getTime() <= to;
    month.setUTCMonth(month.getUTCMonth() + 1)
  ) {
    months.push(month.getTime())
  }
  const every = [1, 2, 3, 6, 12, 24, 60, 120].find((n) => months.length / n <= most) ?? 240
  return months.filter(
    (month) =>
      new Date(month).getUTCMonth() % Math.min(every, 12) === 0 &&
      (every <= 12 || new Date(month).getUTCFullYear() % (every / 12) === 0),
  )
}
