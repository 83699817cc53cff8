import type { WasteKind } from '@sumpbook/fluid'

/** A pickup, with what of it does not agree. */
export interface PickupLine {
  entry: string
  on: string
  litres: number | null
  kilograms: number | null
  code: string | null
  /** Null where its number is still missing. */
  document: string | null
  /** A sentence where it took more than the book knew of. */
  doubt: string | null
}

/** One container of waste. */
export interface WasteContainerNow {
  id: string
  name: string
  /** False where entries name a container that nobody set up. */
  isSetUp: boolean
  stream: string | null
  kind: WasteKind
  code: string | null
  place: string | null
  capacity: number | null
  /** "Emulsion tank: 1310 L of 2000 L; full about 3 January; to be fetched by 12 January, in 45 days." */
  sentence: string
  /** By which term it waits, and since when. */
  term: string
  cautions: string[]
  /** What does not agree, a sentence each. */
  doubts: string[]
  litres: number
  /** Percent of its capacity. */
  full: number | null
  fullOn: string | null
  daily: number | null
  clock: { startedOn: string; endsOn: string; daysLeft: number } | null
  /** Of the days asked for, newest first. */
  stored: { entry: string; on: string; litres: number | null; kilograms: number | null; from: string | null }[]
  pickups: PickupLine[]
}

/** A shop's waste; days are calendar days in its zone. */
export interface WasteAnswer {
  at: string
  today: string
  /** Of the sums and lists, both days included. */
  from: string
  to: string
  containers: WasteContainerNow[]
  /** What the sumps gave beside what was stored, kind by kind. */
  balance: {
    kind: WasteKind
    given: number
    stored: number
    outcome: 'nothing' | 'agrees' | 'lost' | 'gained'
    /** What is not explained. */
    litres: number
    says: string
  }[]
  /** A sentence where draw-offs, skims or cleanouts told no amount. */
  unmeasured: string | null
}
