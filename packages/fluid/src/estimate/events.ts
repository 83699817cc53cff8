import type { Brix, Litres, MgPerLitre, MilliSiemensPerCm, Percent } from '../quantities.ts'
import type { ScaleInUse } from '../refractometer/scale-on.ts'

/**
 * An instant on the shop's own clock: whole calendar days since 1970-01-01 in the shop's zone, and the fraction of the day
 * that its clock shows (`20000.25` is 6 in the morning). Days of 23 or 25 hours count as days.
 */
export type ShopTime = number

/** A figure, or the class of figures that a strip names. */
export type Reported = number | { low: number; high: number } | { below: number } | { atLeast: number }

/** The days on which a shop works. */
export interface WorkCalendar {
  /** ISO days of the week, 1 is Monday. */
  workDays: readonly number[]
  /** First and last day (whole `ShopTime`), both included. */
  shutdowns: readonly { from: number; to: number }[]
}

/** What the book says of a sump at a time. Litres; null is unknown. */
export interface SumpSpec {
  /** At the full mark, pumps stopped, as plate or drawing says. */
  mark: Litres | null
  /** To the brim. */
  capacity: Litres | null
  /** The pumps' suction. */
  minVolume: Litres | null
  /** Out in lines and conveyor while the pumps run. */
  holdUp: Litres | null
  /** Sumps of one kind share what is learnt of their losses; `stand-alone` and `central` at least. */
  group: string
  /** The fluid where no charge has named one. */
  fluid: string
  /** What the fluid is kept at; a sump that was never read is supposed to be about there. */
  target: Percent | null
}

/** A water as it is poured; null is unknown. */
export interface PouredWater {
  hardness: MgPerLitre | null
  chloride: MgPerLitre | null
}

interface OfSump {
  /** The entry's id. */
  id: string
  at: ShopTime
  sump: string
}

export type ChargeEvent = OfSump & {
  kind: 'charge'
  /** Poured; null: up to the mark. */
  volume: Litres | null
  strength: Percent | null
  water: PouredWater
  fluid: string
  /** Of the old fluid; null where nobody said. */
  heldBack: Litres | null
}

export type AdditionEvent = OfSump & {
  kind: 'addition'
  /** Litres of mix, `to-mark` where it was filled up unmeasured, null where nobody said. */
  amount: Litres | 'to-mark' | null
  /** 100 is neat concentrate. */
  strength: Percent | null
  water: PouredWater
  fluid: string
}

export type ReadingEvent = OfSump & {
  kind: 'reading'
  brix: Reported | null
  /** How °Brix becomes percent for each fluid on that day. */
  scales: ReadonlyMap<string, ScaleInUse>
  /** Step of the refractometer, °Brix. */
  resolution: Brix
  instrument: string | null
  titration: Reported | null
  hardness: Reported | null
  chloride: Reported | null
  conductivity: MilliSiemensPerCm | null
  /** Litres seen in the sump itself, by the plate's measure. */
  seen: Litres | null
  pumps: 'running' | 'stopped'
}

/** One thing that happened, in canonical units, of the entries that stand. */
export type ShopEvent =
  | ChargeEvent
  | AdditionEvent
  | ReadingEvent
  | (OfSump & { kind: 'drawoff'; volume: Litres | null })
  /** Fluid moved from `sump` to another one; null: away from the sumps. */
  | (OfSump & { kind: 'transfer'; volume: Litres | null; to: string | null })
  | (OfSump & { kind: 'skim' })
  /** Another job or material: carry-off may be another from here. */
  | (OfSump & { kind: 'job' })
  | (OfSump & { kind: 'cleanout' })
  /** The machine stood still between two times. */
  | (OfSump & { kind: 'idle'; from: ShopTime; until: ShopTime })
  /** Hours on the machine's counter. */
  | (OfSump & { kind: 'hours'; hours: number })
  /** The sump is new, or other from here on. */
  | (OfSump & { kind: 'setup'; spec: SumpSpec })
  /** Somebody answered the doubt about these entries with one of its kinds, or `stands`: the records are right. */
  | (OfSump & { kind: 'verdict'; entries: readonly string[]; answer: string })
