import type {
  Advice,
  Crossing,
  DoubtKind,
  EstimatedDoubt,
  Reader,
  Recipe,
  ShopPriors,
  SumpEstimate,
} from '@sumpbook/fluid'

/** Where every sump stands at an instant, where it will stand, what to pour, and which records do not fit. */
export interface EstimateDocument {
  /** As asked. */
  at: string
  shop: { name: string; timeZone: string; units: Reader['units'] }
  /** What the shop's own records taught, and from how much. */
  learnt: { version: number; from: ShopPriors['from']; text: string }
  sumps: Record<string, SumpAnswer>
}

export interface SumpAnswer {
  name: string
  now: SumpEstimate['now']
  /** With nothing added and nothing drawn off, in the order asked. */
  ahead: Omit<SumpEstimate['ahead'][number], 'inner'>[]
  crossing: CrossingAnswer | null
  recipe: EstimatedRecipe
  doubts: DoubtAnswer[]
  /** Of the youngest record it rests on, RFC 3339; null where there is none. */
  dataAt: string | null
}

/** When a limit is first crossed if nothing is done; times RFC 3339. */
export interface CrossingAnswer {
  limit: Crossing['limit']
  probability: number
  earliest: string
  likely: string
  latest: string
}

export interface DoubtAnswer {
  kind: DoubtKind
  entry: string | null
  entries: string[]
  at: string
  probability: number
  /** Litres; null where the story is of a reading. */
  volume: number | null
  /** What was read and what was expected, in °Brix, percent or litres, whichever surprised. */
  found: EstimatedDoubt['found']
  text: string
  open: boolean
  others: { kind: DoubtKind | 'stands'; probability: number }[]
}

/** A recipe as `calc top-up` gives it. */
export interface EstimatedRecipe extends Omit<Recipe, 'because'> {
  reasons: Recipe['because']
  dispensed: Advice['dispensed']
  notes: string[]
  cautions: string[]
}

/** One sump's past and future, as a drawing needs it. Times RFC 3339. */
export interface Outlook extends Omit<SumpAnswer, 'ahead'> {
  sump: string
  at: string
  /** The limits that hold for it, its own before its fluid's; what nobody set is null. */
  limits: { hardness: Ends | null; chloride: Ends | null }
  /** The strength of steady top-ups that holds its target, percent; null without a target. */
  topUpToHold: number | null
  /** Where it stood at the end of each day, by all that is known today; from its first record on. */
  history: FannedDay[]
  /** What was written of it in that time and stands, for marks. */
  entries: { id: string; kind: string; at: string }[]
  /** Day by day with nothing added and nothing drawn off. */
  ahead: (FannedDay & { days: number })[]
}

/** A limit with one end or two. */
export interface Ends {
  low: number | null
  high: number | null
}

/** Figures of one moment with the intervals of a fan. */
export interface FannedDay {
  at: string
  concentration: Fan
  volume: Fan
  hardness: Fan
}

/** A mean with its central intervals of 90 % and of 50 %. */
export interface Fan {
  mean: number
  low90: number
  high90: number
  low50: number
  high50: number
}
