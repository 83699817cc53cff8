import type { Days, Figure, Litres } from '../quantities.ts'
import type { ShopTime } from './events.ts'

/** The stories that a surprising record can have. */
export type DoubtKind =
  | 'misread'
  | 'instrument'
  | 'wrong-sump'
  | 'wrong-fluid'
  | 'unlogged-addition'
  | 'unlogged-water'
  | 'unlogged-concentrate'
  | 'unlogged-drawoff'
  | 'unlogged-charge'
  | 'leak-in'

/** Records that do not fit, with their likeliest story. */
export interface EstimatedDoubt {
  kind: DoubtKind
  /** The reading at which it showed; null where it concerns several alike. */
  entry: string | null
  entries: string[]
  at: ShopTime
  /** 0.5 to 1, of `kind`. */
  probability: number
  /** Litres nobody wrote down (negative: taken out); null where the story is of a reading. */
  volume: Litres | null
  /** What was read and what was expected, in °Brix or litres, whichever surprised. */
  found: { quantity: 'brix' | 'titration' | 'seen'; read: number; expected: number; low90: number; high90: number }
  /** Whether it still moves the estimate. */
  open: boolean
  /** The other stories, `stands` (nothing is wrong) included, likeliest first. */
  others: { kind: DoubtKind | 'stands'; probability: number }[]
}

/** Where a sump stands at a time. Percent, litres, mg/L, litres a calendar day. */
export interface SumpEstimate {
  now: {
    concentration: Figure
    /** All the fluid of the system. */
    volume: Figure
    hardness: Figure
    chloride: Figure
    /** Means over the 28 days before. */
    evaporation: Figure
    carryOff: Figure
    /** Litres at the full mark, as learnt. */
    markVolume: Figure
  }
  ahead: FiguresAhead[]
  doubts: EstimatedDoubt[]
  /** When the youngest record that moved it was made; null before the first. */
  dataAt: ShopTime | null
}

export interface FiguresAhead {
  days: Days
  concentration: Figure
  volume: Figure
  hardness: Figure
  /** 50 % intervals, for the inner fan. */
  inner: { concentration: { low: number; high: number }; volume: { low: number; high: number } }
}

/** When a limit is first crossed if nothing is poured or drawn. */
export interface Crossing {
  limit: 'concentration.low' | 'concentration.high' | 'volume.low' | 'hardness.high' | 'chloride.high'
  /** Of crossing it within the horizon, 0 to 1. */
  probability: number
  /** Days from now at which 5 %, 50 % and 95 % of that probability has passed. */
  earliest: Days
  likely: Days
  latest: Days
}
