import { crossingHorizon, firstCrossing } from '../metrics/crossing.ts'
import { everySump, ofLastReading } from './last-reading.ts'
import { figure, type Peer, type Question, type SumpEstimate } from './peer.ts'
import { fluidAt, type SumpHistory } from './sump-history.ts'

const dayMs = 86_400_000
/** Percent by which one reading scatters about the line. */
const scatter = 0.35

/** A straight line through the readings since the last pour; with fewer than two of them, the last reading. */
export const straightLine: Peer = {
  name: 'straight line',
  estimate: (book, question) => everySump(book, question, (history) => onStraightLine(history, question)),
}

function onStraightLine(history: SumpHistory, question: Question): SumpEstimate {
  const plain = ofLastReading(history, question)
  const { entries } = history
  const pour = entries.findLastIndex(({ kind }) => kind === 'addition' || kind === 'charge' || kind === 'drawoff')
  const since = entries.slice(pour + 1).filter(({ brix }) => brix !== undefined)
  if (since.length < 2) return plain
  const { brixFactor, limits } = fluidAt(history, question.atMs)
  const line = fitLine(
    since.map(({ at, brix }) => ({ x: (Date.parse(at) - question.atMs) / dayMs, y: brix! * brixFactor })),
    scatter,
  )
  const at = (days: number) => figure(Math.max(line.at(days), 0), Math.hypot(line.sd(days), 0.1 * Math.sqrt(days)))
  const course = Array.from({ length: crossingHorizon + 1 }, (_, days) => line.at(days))
  return {
    ...plain,
    now: { ...plain.now, concentration: at(0) },
    ahead: plain.ahead.map((figures) => ({ ...figures, concentration: at(figures.days) })),
    crossingDays: firstCrossing(course, limits.concentration),
  }
}

/**
 * Least squares through points whose scatter is known: the line, and the standard deviation of the line at x.
 *
 * @throws {RangeError} fewer than two different x
 */
export function fitLine(points: readonly { x: number; y: number }[], sd: number) {
  const n = points.length
  const meanX = points.reduce((sum, { x }) => sum + x, 0) / n
  const meanY = points.reduce((sum, { y }) => sum + y, 0) / n
  const sxx = points.reduce((sum, { x }) => sum + (x - meanX) ** 2, 0)
  if (!(sxx > 0)) throw new RangeError('a line needs two different places')
  const slope = points.reduce((sum, { x, y }) => sum + (x - meanX) * (y - meanY), 0) / sxx
  return {
    slope,
    at: (x: number) => meanY + slope * (x - meanX),
    sd: (x: number) => sd * Math.sqrt(1 / n + (x - meanX) ** 2 / sxx),
  }
}
