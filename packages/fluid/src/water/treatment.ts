import type { Litres, LitresPerDay, MgPerLitre } from '../quantities.ts'
import { OutOfRange, requireRange } from '../require.ts'

/** The water that is treated. */
export interface FeedWater {
  /** Total dissolved solids; null where unknown. */
  tds: MgPerLitre | null
  hardness: MgPerLitre
  /** Money a litre. */
  costPerLitre: number
}

/** A reverse-osmosis unit. */
export interface MembraneUnit {
  /** Permeate it makes, above 0. */
  litresPerDay: LitresPerDay
  /** Money, 0 or more. */
  price: number
  /** Share of the feed that becomes permeate, above 0 to 1; 0.75 for 75 %. */
  recovery: number
  /** Share of the dissolved solids held back, 0 to 1. */
  rejection: number
  /** Money a year: membranes, filters, power, somebody's time. */
  upkeepPerYear: number
}

/** Resin that takes out what is left: mixed-bed cartridges, or deionising tanks on their own. */
export interface Polisher {
  /** Above 0. */
  resinLitres: Litres
  /** Grams of CaCO3 a litre of resin takes up, above 0. */
  capacityPerLitre: number
  /** Money for each exchange of the resin. */
  price: number
}

export interface TreatmentQuestion {
  /** Treated water used, above 0. */
  demand: LitresPerDay
  /** The worst day over the mean day, 1 or more; default 1.5. */
  peak?: number | undefined
  tap: FeedWater
  unit: MembraneUnit | null
  polisher: Polisher | null
  /** What better water saves a year in fluid, changes and waste; money. */
  fluidSaving: number
  /** Over which the unit is written off, above 0; default 5. */
  years?: number | undefined
}

export interface Treatment {
  /** What a unit must make on the worst day. */
  capacityNeeded: LitresPerDay
  /** Whether the unit makes it; null without a unit. */
  enough: boolean | null
  /** Water drawn from the tap to make the demand. */
  feed: LitresPerDay
  /** What goes to the drain: all feed that is not permeate, and how salty it is; null without a unit. */
  concentrate: { litresPerDay: LitresPerDay; tds: MgPerLitre | null } | null
  /** Salt in the permeate before any polisher; the tap's own without a unit. */
  permeate: { tds: MgPerLitre | null; hardness: MgPerLitre }
  /** Litres made on one filling of resin; null without a polisher, or where nothing is left for it to take. */
  resinLife: Litres | null
  /** Of treated water: feed, upkeep, resin, and the unit's price over its years. */
  costPerLitre: number
  /** The unit's price over what is saved a year beyond running costs; null where it never pays or costs nothing to begin with. */
  paybackYears: number | null
  /** Money a year: feed beyond what the tap itself would take, upkeep, resin. */
  runningPerYear: number
}

/**
 * Size and cost of treating water.
 *
 *     capacityNeeded = demand · peak
 *     feed = demand / recovery                 permeate = tap · (1 − rejection)
 *     concentrate tds = tds · (1 − recovery · (1 − rejection)) / (1 − recovery)
 *     resinLife = resinLitres · capacityPerLitre / salt reaching the resin
 *     costPerLitre = tap / recovery + (price / years + upkeep) / (365 demand) + polisher price / resinLife
 *     paybackYears = price / (fluidSaving − runningPerYear)
 *
 * The salt reaching the resin is the dissolved solids, taken as CaCO3 (common practice), for a deioniser takes every salt; where they are unknown,
 * the hardness, and then the life is an upper end. A storage tank lets a unit of the mean demand carry the peaks. Rejection falls as membranes age,
 * recovery with cold water.
 *
 * Source: mass balance; straight-line write-off without interest.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 */
export function treatment(question: TreatmentQuestion): Treatment {
  const { demand, peak = 1.5, tap, unit, polisher, fluidSaving, years = 5 } = question
  requireTreatment(question)
  const passed = unit === null ? 1 : 1 - unit.rejection
  const permeate = { tds: tap.tds === null ? null : tap.tds * passed, hardness: tap.hardness * passed }
  const feed = demand / (unit?.recovery ?? 1)
  const resinLife = polisher === null ? null : lifeOf(polisher, permeate)
  const resinPerLitre = polisher === null || resinLife === null ? 0 : polisher.price / resinLife
  const upkeep = unit?.upkeepPerYear ?? 0
  const price = unit?.price ?? 0
  const yearly = demand * daysPerYear
  const runningPerYear = (feed - demand) * daysPerYear * tap.costPerLitre + upkeep + yearly * resinPerLitre
  const net = fluidSaving - runningPerYear
  return {
    capacityNeeded: demand * peak,
    enough: unit === null ? null : unit.litresPerDay >= demand * peak,
    feed,
    concentrate: unit === null ? null : concentrateOf(unit, tap, feed),
    permeate,
    resinLife,
    costPerLitre: (feed / demand) * tap.costPerLitre + (price / years + upkeep) / yearly + resinPerLitre,
    paybackYears: price > 0 && net > 0 ? price / net : null,
    runningPerYear,
  }
}

const daysPerYear = 365

/** Null where no salt is left for the resin. */
function lifeOf({ resinLitres, capacityPerLitre }: Polisher, { tds, hardness }: Treatment['permeate']): Litres | null {
  const salt = tds ?? hardness
  return salt === 0 ? null : (resinLitres * capacityPerLitre * 1000) / salt
}

/** What does not pass must leave with the concentrate; with all feed recovered there is no such stream. */
function concentrateOf({ recovery, rejection }: MembraneUnit, { tds }: FeedWater, feed: LitresPerDay) {
  const litresPerDay = feed * (1 - recovery)
  const salt = tds === null || recovery === 1 ? null : (tds * (1 - recovery * (1 - rejection))) / (1 - recovery)
  return { litresPerDay, tds: salt }
}

function requireTreatment({
  demand,
  peak = 1.5,
  tap,
  unit,
  polisher,
  fluidSaving,
  years = 5,
}: TreatmentQuestion): void {
  requireRange('demand', demand, { above: 0 })
  requireRange('peak', peak, { min: 1 })
  if (tap.tds !== null) requireRange('tap.tds', tap.tds, { min: 0 })
  requireRange('tap.hardness', tap.hardness, { min: 0 })
  requireRange('tap.costPerLitre', tap.costPerLitre, { min: 0 })
  requireRange('fluidSaving', fluidSaving, { min: 0 })
  requireRange('years', years, { above: 0 })
  if (unit !== null) {
    requireRange('unit.litresPerDay', unit.litresPerDay, { above: 0 })
    requireRange('unit.price', unit.price, { min: 0 })
    requireRange('unit.recovery', unit.recovery, { above: 0, max: 1 })
    requireRange('unit.rejection', unit.rejection, { min: 0, max: 1 })
    requireRange('unit.upkeepPerYear', unit.upkeepPerYear, { min: 0 })
  }
  if (polisher !== null) {
    requireRange('polisher.resinLitres', polisher.resinLitres, { above: 0 })
    requireRange('polisher.capacityPerLitre', polisher.capacityPerLitre, { above: 0 })
    requireRange('polisher.price', polisher.price, { min: 0 })
  }
  if (unit === null && polisher === null) throw new OutOfRange('unit', 0, 'a unit or a polisher')
}
