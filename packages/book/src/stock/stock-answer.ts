import type { Demand, OrderSize } from '@sumpbook/fluid'

/** The stock of a shop; days are calendar days in its zone. */
export interface StockAnswer {
  at: string
  today: string
  /** Of the movements that are listed, both days included. */
  from: string
  to: string
  fluids: FluidStock[]
}

/** One fluid's stock. Volumes in litres of concentrate. */
export interface FluidStock {
  fluid: string
  name: string
  class: string | null
  /** Whether anything was ever received, counted or ordered of it. */
  isKept: boolean
  /** "Blue 40: 430 L in 3 lots, lasts until about 12 January; order 2 drums by 2 December." */
  sentence: string
  /** What stands behind it, a sentence each. */
  says: string[]
  /** What does not agree, is too old or will be, a sentence each. */
  doubts: string[]
  /** What to mind about lots that are too old or came open. */
  cautions: string[]
  /** What counts as used. */
  usedBy: 'issues' | 'pours'
  /** Whether the shop set it; else it follows from whether there are issues. */
  usedBySet: boolean
  litres: number
  /** Soonest to expire first. */
  lots: {
    /** Null: of unknown lot. */
    lot: string | null
    litres: number
    received: number
    receivedOn: string
    madeOn: string | null
    expiresOn: string | null
    agedFrom: 'made' | 'opened' | 'arrival' | null
    seal: 'whole' | 'broken' | null
  }[]
  /** Pours whose concentrate nobody measured; they count as nothing. */
  unmeasured: number
  issued: number
  poured: number
  demand: Demand | null
  reorderPoint: number | null
  safetyStock: number | null
  runsOutOn: { likely: string | null; earliest: string | null; latest: string | null } | null
  /** The next order; null where none is due within two years, or nothing is known of what goes. */
  order: { packs: number; litres: number; because: OrderSize['because']; by: string } | null
  onOrder: { entry: string; litres: number; orderedOn: string; expectedOn: string; late: boolean }[]
  planned: { on: string; litres: number; what: string }[]
  expiring: { lot: string | null; litres: number; on: string }[]
  counts: { on: string; lot: string | null; found: number; expected: number; says: string }[]
  settings: StockSettings
  /** Newest first, of the days asked for. */
  movements: Movement[]
}

/** A line of what happened to a fluid's stock. */
export interface Movement {
  entry: string
  at: string
  kind: 'receipt' | 'issue' | 'count' | 'order' | 'pour'
  litres: number | null
  lot: string | null
}

/** A figure that the shop set, or that is taken for granted until it does. */
export interface Setting {
  value: number
  assumed: boolean
}

/** By what a fluid's orders are reckoned. */
export interface StockSettings {
  /** Litres of a drum. */
  packSize: Setting
  leadDays: Setting
  leadSd: Setting
  /** Percent. */
  service: Setting
  /** Null where nobody said: the size of an order is then four weeks' use. */
  orderCost: number | null
  /** Money for a litre kept a year; null without a price or a percentage. */
  holdingCostPerYear: number | null
  holdingPercent: Setting
  usedBy: 'issues' | 'pours' | null
}
