import type { BenchSump } from '../book.ts'
import type { Chance } from '../simulate/random.ts'
import { type Calendar, hourStart } from './calendar.ts'
import { type Contents, percentOf } from './contents.ts'
import type { Machine } from './machine.ts'
import type { Notebook } from './notebook.ts'
import type { Stores } from './stores.ts'
import type { Wandering } from './wander.ts'

/** One sump as it stands now, with where it stood at every full hour before. */
export interface Place {
  machine: Machine
  inBook: BenchSump
  chance: Chance
  wandering: Wandering
  contents: Contents
  /** Place of the product in use. */
  product: number
  /** Litres of room taken by sludge, °Brix of oil. */
  sludge: number
  oil: number
  counter: number
  /** Percent that the last look came to, as the crew has it. */
  lastSeen: number | null
  due: { strip: number; titration: number; skim: number; drawOff: number }
  past: { litres: number; percent: number; hardness: number }[]
}

export interface Scene {
  calendar: Calendar
  stores: Stores
  places: Place[]
  notebook: Notebook
  chance: Chance
}

/** A moment of the scene: the hour that it is, and the minute in it. */
export interface Moment {
  hour: number
  minute: number
}

export const dayOf = ({ hour }: Moment): number => Math.floor(hour / 24)
export const msOf = ({ calendar }: Scene, { hour, minute }: Moment): number =>
  hourStart(calendar, hour) + minute * 60_000
export const runsAt = ({ wandering }: Place, hour: number): boolean => wandering.flows[hour]!.carryOff > 0

/** Litres by which the sump is short of its mark. */
export const shortOf = ({ machine, sludge, contents }: Place): number => machine.mark - sludge - contents.litres

/** What a perfect refractometer would show: each product by its own factor, salts (0.12 °Brix per 1000 mg/L, from memory), oil. */
export function brixOf({ contents, oil }: Place, { products }: Stores): number {
  const { litres, concentrate, hardness, salts } = contents
  const fluid = concentrate.reduce((sum, of, i) => sum + (100 * of) / litres / products[i]!.factor, 0)
  return fluid + (0.00012 * (hardness + salts)) / litres + oil
}

export function remember({ past, contents }: Place): void {
  const { litres, hardness } = contents
  past.push({ litres, percent: percentOf(contents), hardness: hardness / litres })
}
