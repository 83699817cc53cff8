import type { Action, Advice, Figure, RecipeBench } from '@sumpbook/fluid'

export type { RecipeBench } from '@sumpbook/fluid'

/** What the shop should do now: one list, most consequence first, and where every other sump stands. */
export interface Today {
  at: string
  shop: { name: string; timeZone: string; units: 'us' | 'metric' | 'imperial' }
  /** The day in a sentence or two: how much to do, what the cart carries, the last shift's note. */
  lede: string
  cart: Cart
  items: TodayItem[]
  /** Sumps that need nothing now; their recipes are what a fill to the mark would take. */
  calm: TodayItem[]
  /** Entries whose subject the book does not know (yet): counted nowhere until it does. */
  quarantined: number
}

/** What goes on the cart for the pours of the list. */
export interface Cart {
  waters: { id: string | null; name: string; volume: number }[]
  concentrates: { fluid: string; name: string; litres: number }[]
}

/** One sump as its records leave it. Volumes are of the whole system, in litres; times RFC 3339, UTC. */
export interface SumpNow {
  sump: string
  name: string
  place: string | null
  /** Where on the round it comes; null where nobody said. */
  order: number | null
  fluid: { id: string; name: string; class: string | null }
  /** What a phone needs to make the recipe itself, the same as the server's. */
  bench: RecipeBench
  concentration: Figure | null
  volume: Figure | null
  /** The last reading of strength, as found. */
  lastStrength: LastReading | null
  /** The last reading of level or volume. */
  lastLevel: LastReading | null
  /** One sentence: where it stands. */
  sentence: string
}

export interface LastReading {
  entry: string
  at: string
  by: string | null
  /** As read: "3.4 °Brix", "162 L", "84 mm". */
  text: string
  /** What a reading of strength came to, percent, by the scale of its day; null for a level, or without a scale. */
  concentration: number | null
}

/** Why a sump is on the list. */
export type Condition =
  | 'below-suction'
  | 'over-full'
  | 'lean'
  | 'rich'
  | 'low-level'
  | 'measure-first'
  | 'unread'
  | 'in-order'
  | 'straight-oil'

export interface TodayItem extends SumpNow, Advice {
  condition: Condition
  action: Action
  /** The time of the youngest record the recipe rests on; null without any. */
  dataAt: string | null
  /** One sentence on its reasons. */
  why: string
}
