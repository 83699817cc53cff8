/** What a span of days cost, and what another way would have: answers alone, without code. */
import type { Cents, CostGrowth, SaidGap, SaidLitres, SaidPart } from '@sumpbook/fluid'

/** What a cost is part of. */
export type CostPart = SaidPart

/** Calendar days of the shop, `2026-10-01`, both included. */
export interface DaySpan {
  from: string
  to: string
}

/** Litres poured. What was written is summed exactly as it was written; what was reckoned from levels stands apart. */
export interface Litres {
  mix: number
  concentrate: number
  water: number
  /** Fills to the mark, by the level read before them. */
  byLevel: { mix: number; concentrate: number; water: number; fills: number }
  /** Pours of which nobody wrote how much. */
  unmeasured: number
  /** Of these litres of mix nobody wrote the strength. */
  withoutStrength: number
}

/** A figure of the shop's own that the cost rests on; null where nobody gave it: then nothing is counted by it. */
export interface Assumption {
  figure:
    | 'labourPerHour'
    | 'machinePerHour'
    | 'minutesPerStop'
    | 'cleanerPerLitre'
    | 'wastePerLitre'
    | 'wastePerPickup'
    | 'leanPerDay'
  value: number | null
}

/** A price a litre under a name; null where nobody set it. */
export interface NamedPrice {
  name: string
  perLitre: number | null
}

/** Whole cents by part; every sum of them is exact. */
export type PartCents = Record<CostPart, Cents>

/** What a span of days cost. Money in whole cents; every sum of parts, sumps and months is exact. */
export interface Cost extends DaySpan {
  sump: string | null
  currency: string
  /** The journal's head whose entries are in it. */
  head: { seq: number; hash: string }
  cents: Cents
  /** Of these, what rests on litres that were reckoned from levels. */
  estimated: Cents
  parts: PartCents
  months: { month: string; cents: Cents; parts: PartCents }[]
  sumps: SumpCost[]
  litres: Litres
  /** What was poured of each fluid's concentrate, as written and by level; its price at the end of the span. */
  fluids: { id: string; name: string; litres: number; perLitre: number | null }[]
  waters: { id: string | null; name: string; kind: string | null; litres: number; perLitre: number | null }[]
  /** What treated water cost more than the shop's cheapest water would have; null where prices are missing. */
  treatedExtra: Cents | null
  assumptions: Assumption[]
  /** Prices by name: of waste streams that the shop keeps or prices, of additives that were poured or are priced; null where none is set. */
  prices: { streams: NamedPrice[]; additives: NamedPrice[] }
  /** What was not counted and why, with its sentence. */
  gaps: (SaidGap & { text: string })[]
  /** What is taken for granted, a sentence each. */
  rules: readonly string[]
  /** First what it cost, then what is to be known of it. */
  sentences: string[]
}

/** A sump's share; `sump` null is what belongs to the shop as a whole. */
export interface SumpCost {
  sump: string | null
  name: string
  cents: Cents
  estimated: Cents
  parts: PartCents
  litres: Litres
  /** Hours that its machines ran, by the readings; null without two of them. */
  machineHours: number | null
  centsPerHour: Cents | null
  stops: number
  /** Litres that left it as waste: drawn off, cleaned out, skimmed. */
  wasteLitres: number
}

/** Days by where the sump stood, as its readings tell. */
export interface BandDays {
  inBand: number
  under: number
  above: number
  unknown: number
}

/** What the way of pouring cost in a span, and what another would save: estimates, each with its interval. */
export interface Habits extends DaySpan {
  currency: string
  /** Days of the span that have passed. */
  days: number
  /** Of all sumps; null where no price is known. */
  rich: { litres: SaidLitres; cents: SaidLitres | null }
  saved: { litres: SaidLitres; cents: SaidLitres | null } | null
  lean: { days: number; cents: Cents | null }
  sumps: SumpHabit[]
  /** What the figures rest on, a sentence each. */
  rules: readonly string[]
  sentences: string[]
}

export interface SumpHabit {
  sump: string
  name: string
  target: number
  days: BandDays
  /** Litres over the days that have passed, by the estimate. */
  losses: { evaporation: SaidLitres; carryOff: SaidLitres }
  /** Percent that holds the target; null where nothing is carried off. */
  topUpToHold: number | null
  /** Percent of what was poured as top-ups, on average by volume; null without any. */
  pouredStrength: number | null
  rich: { litres: SaidLitres; cents: SaidLitres | null }
  /** Null where it cannot be said: a charge in the span, no strength at its beginning, a pour without an amount. */
  saving: { poured: number; need: SaidLitres; saved: SaidLitres; cents: SaidLitres | null } | null
  lean: { days: number; cents: Cents | null }
  sentences: string[]
}

/** When each sump's charge would be changed by money alone, and where condition decides before that. */
export interface Lives {
  at: string
  currency: string
  sumps: SumpLife[]
  rules: readonly string[]
}

export interface SumpLife {
  sump: string
  name: string
  /** The day of its last charge, and days since; null where none is written within a year. */
  chargedOn: string | null
  age: number | null
  /** Money in units of the currency, a day and a day each day. */
  growth: CostGrowth
  changeCost: { cents: Cents; assumed: boolean } | null
  /** Null where condition decides, or money gives no reason. */
  life: { days: number; low: number; high: number; centsPerDay: Cents } | null
  /** For which finding it goes now, whatever the money; null where none is written, which does not say that it is good. */
  condition: string | null
  sentence: string
}
