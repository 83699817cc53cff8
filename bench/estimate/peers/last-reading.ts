import type { BenchBook } from '../book.ts'
import { type Figure, figure, logFigure, type Peer, type Question, type SumpEstimate } from './peer.ts'
import { fluidAt, historyOf, middleOf, type SumpHistory, seenLitres } from './sump-history.ts'

const dayMs = 86_400_000

/**
 * What most shops do: the last reading stands until the next one. Its interval is 0.35 % wide at once and grows with the
 * root of its age, ahead as well; for losses it knows only shares of the volume that are common practice.
 */
export const lastReading: Peer = {
  name: 'last reading',
  estimate: (book, question) => everySump(book, question, (history) => ofLastReading(history, question)),
}

export function everySump(
  book: BenchBook,
  { atMs }: Question,
  estimate: (history: SumpHistory) => SumpEstimate,
): Map<string, SumpEstimate> {
  return new Map(book.sumps.map((sump) => [sump.id, estimate(historyOf(book, sump, atMs))]))
}

export function ofLastReading(history: SumpHistory, { atMs, aheadDays }: Question): SumpEstimate {
  const last = history.entries.findLast(({ brix }) => brix !== undefined)
  const lastMs = last === undefined ? atMs : Date.parse(last.at)
  const fluid = fluidAt(history, lastMs)
  const percent = last === undefined ? fluid.limits.concentration.target : last.brix! * fluid.brixFactor
  const concentrationIn = (days: number): Figure => {
    const age = Math.max(0, (atMs - lastMs) / dayMs) + days
    return figure(percent, Math.hypot(last === undefined ? 2 : 0.35, 0.3 * Math.sqrt(age)))
  }
  const volume = lastVolume(history)
  const hardness = lastHardness(history)
  return {
    now: {
      concentration: concentrationIn(0),
      volume,
      hardness,
      evaporation: logFigure(0.016 * history.mark, 0.6),
      carryOff: logFigure(0.006 * history.mark, 0.8),
    },
    ahead: aheadDays.map((days) => ({
      days,
      concentration: concentrationIn(days),
      volume: figure(volume.mean, Math.hypot(volume.sd, 0.012 * days * history.mark)),
      hardness: figure(hardness.mean, Math.hypot(hardness.sd, 0.01 * days * hardness.mean)),
    })),
    crossingDays: null,
  }
}

function lastVolume(history: SumpHistory): Figure {
  const seen = history.entries.map((entry) => (entry.kind === 'reading' ? seenLitres(history, entry) : null))
  return figure(seen.findLast((litres) => litres !== null) ?? history.mark, 0.15 * history.mark)
}

function lastHardness({ entries }: SumpHistory): Figure {
  const last = entries.findLast(({ kind, hardness }) => kind === 'reading' && hardness !== undefined)
  if (last === undefined) return figure(250, 200)
  const { mean, sd } = middleOf(last.hardness!)
  return figure(mean, Math.hypot(sd, 0.2 * mean, 5))
}
