import type { BenchBook } from './book.ts'
import type { Labels } from './simulate/labels.ts'

/** What really stood in a sump at an instant. */
export interface TruthNow {
  /** Percent. */
  concentration: number
  /** Litres, what is out in the lines included. */
  volume: number
  /** mg/L. */
  hardness: number
  /** Litres a calendar day over the 28 days before. */
  evaporation28: number
  carryOff28: number
}

export type TruthAhead = Pick<TruthNow, 'concentration' | 'volume' | 'hardness'>

export interface Truth {
  at(sump: string, ms: number): TruthNow
  /** What stands there if nothing is added and nothing drawn off after `ms`, day by day; its first place is `ms` itself. */
  ahead(sump: string, ms: number, days: number): TruthAhead[]
  /** Litres that evaporated and were carried off between two instants, of the simulator's own course of losses. */
  losses(sump: string, fromMs: number, toMs: number): { evaporated: number; carried: number }
}

/** A shop's half year: what its people wrote, and what was so. */
export interface SimulatedShop {
  book: BenchBook
  truth: Truth
  labels: Labels
  /** The instant at the beginning of an hour or half hour, counted from the start. */
  instant: (day: number, hour: number) => number
}

export interface ShopSize {
  seed: number
  /** The shop's number: the same seed and number give the same shop. */
  shop: number
  sumps: number
}

/** A simulator of shops. */
export type World = (size: ShopSize) => SimulatedShop
