import type { BenchBook } from '../book.ts'
import type { Doubt } from '../metrics/doubts.ts'

/** A figure as `estimate` gives it. */
export interface Figure {
  mean: number
  sd: number
  low90: number
  high90: number
}

export interface FiguresAhead {
  days: number
  concentration: Figure
  volume: Figure
  hardness: Figure
}

export interface SumpEstimate {
  now: {
    concentration: Figure
    volume: Figure
    hardness: Figure
    /** Litres a calendar day over the 28 days before. */
    evaporation: Figure
    carryOff: Figure
  }
  ahead: FiguresAhead[]
  /** Days until the concentration leaves its band if nothing is done; null where none is called; absent where the peer never says. */
  crossingDays?: number | null
  doubts?: Doubt[]
}

export interface Question {
  /** The instant asked about; entries after it are not used. */
  atMs: number
  aheadDays: readonly number[]
}

/** Anything that reads a book and says where its sumps stand. */
export interface Peer {
  name: string
  estimate(book: BenchBook, question: Question): Map<string, SumpEstimate> | Promise<Map<string, SumpEstimate>>
}

/** A peer that says it at once. */
export interface PromptPeer extends Peer {
  estimate(book: BenchBook, question: Question): Map<string, SumpEstimate>
}

const z90 = 1.6448536269514722

/** A normal figure; what cannot be negative has its lower end at 0. */
export function figure(mean: number, sd: number): Figure {
  return { mean, sd, low90: Math.max(0, mean - z90 * sd), high90: mean + z90 * sd }
}

/** A figure above 0 whose logarithm is normal about that of `middle`. */
export function logFigure(middle: number, logSd: number): Figure {
  const reach = Math.exp(z90 * logSd)
  return { mean: middle, sd: middle * logSd, low90: middle / reach, high90: middle * reach }
}
