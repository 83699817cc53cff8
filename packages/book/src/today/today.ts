import type { Action, Dispensed, Figure, Recipe, RecipeWords } from '@sumpbook/fluid'

/** What the shop should do now: one list, most consequence first, and where every other sump stands. */
export interface Today {
  at: string
  shop: { name: string; timeZone: string; units: 'us' | 'metric' | 'imperial' }
  /** The day in a sentence or two: how much to do, what the cart carries, the last shift's note. */
  lede: string
  cart: Cart
  items: TodayItem[]
  /** Sumps that need nothing. */
  calm: SumpNow[]
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
}

/** Why a sump is on the list. */
export type Condition = 'lean' | 'rich' | 'low-level' | 'over-full' | 'does-not-fit' | 'unread' | 'straight-oil' | 'low'

export interface TodayItem extends SumpNow {
  condition: Condition
  action: Action
  recipe: Recipe
  words: RecipeWords
  /** The pour in the shop's buckets; null without a bucket or a pour. */
  dispensed: Dispensed | null
  /** Other ways, a sentence each. */
  alternatives: string[]
  /** The time of the youngest record the recipe rests on; null without any. */
  dataAt: string | null
  /** One sentence on its reasons. */
  why: string
}

/** All that the recipe of one sump needs besides what is read at it; the same object serves phone and server. */
export interface RecipeBench {
  /** Percent per °Brix, of the fluid now in the sump. */
  brixFactor: number | null
  brixChart: readonly (readonly [number, number])[] | null
  /** °Brix, of the instrument in use; 0.2 without one. */
  resolution: number
  fillVolume: number | null
  capacity: number | null
  minVolume: number | null
  holdUp: number
  dipTable: readonly (readonly [number, number])[] | null
  target: number | null
  band: { low: number; high: number } | null
  maxStrength: number
  minStrength: number
  class: 'soluble-oil' | 'semi-synthetic' | 'synthetic' | 'straight-oil' | null
  waters: {
    id: string
    name: string
    kind?: 'tap' | 'well' | 'softened' | 'reverse-osmosis' | 'deionised'
    hardness?: number
  }[]
  container: { id: string; name: string; capacity: number; graduation?: number } | null
}
