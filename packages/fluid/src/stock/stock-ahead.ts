import type { DayNumber } from '../calendar/day-number.ts'
import type { Days, Litres } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { normalQuantile } from '../statistics/normal.ts'
import type { Demand } from './demand.ts'
import type { StockLot } from './lots.ts'

/** Days that are looked ahead: two years. */
export const daysAhead = 730

/** Concentrate that will be needed on a day, beside what goes every day: a cleanout's new charge. */
export interface PlannedUse {
  on: DayNumber
  litres: Litres
  /** "Cleanout of Mill 8". */
  what: string
}

/** Ordered, and not there yet. */
export interface OnOrder {
  litres: Litres
  expectedOn: DayNumber
}

export interface StockAheadQuestion {
  today: DayNumber
  lots: readonly Pick<StockLot, 'lot' | 'litres' | 'expiresOn' | 'receivedOn'>[]
  demand: Pick<Demand, 'dailyMean' | 'dailySd' | 'dailyMeanSd'>
  planned: readonly PlannedUse[]
  onOrder: readonly OnOrder[]
  /** From order to delivery. */
  leadDays: Days
  safetyStock: Litres
}

export interface StockAhead {
  /** The first day on which there is less than is needed, by what is there; null: not within two years. */
  runsOutOn: { likely: DayNumber | null; earliest: DayNumber | null; latest: DayNumber | null }
  /** Order by this day at the latest, today at the earliest; null: not within two years. */
  orderBy: DayNumber | null
  /** What is too old before it is used. */
  expiring: { lot: string | null; litres: Litres; on: DayNumber }[]
}

/**
 * How long stock lasts, when the next order is due, and what grows too old. Stock is used a day at a time, soonest to expire
 * first; what expires is gone. A day's use is its mean; the interval comes from
 *
 *     used by day t = dailyMean · t ± 1.645 · √(dailySd² · t + dailyMeanSd² · t²) + planned
 *
 * The order is due `leadDays` before the first day on which stock, with what is on its way, is down to the safety stock, of the days
 * that an order placed today can help: for steady use that is the day on which it is down to the reorder point.
 *
 * @throws {RangeError} a quantity below 0
 * @example stockAhead({ today: 0, lots: [{ lot: 'A', litres: 100, expiresOn: null, receivedOn: 0 }], demand: { dailyMean: 5, dailySd: 0, dailyMeanSd: 0 }, planned: [], onOrder: [], leadDays: 5, safetyStock: 10 }) // out on day 20, order by 13
 */
export function stockAhead(question: StockAheadQuestion): StockAhead {
  const { today, demand, planned, lots, onOrder, leadDays, safetyStock } = question
  const { dailyMean, dailySd, dailyMeanSd } = demand
  for (const [name, value] of Object.entries({ dailyMean, dailySd, dailyMeanSd, leadDays, safetyStock })) {
    requireRange(name, value, { min: 0 })
  }
  const by = (z: number) => (day: number) =>
    Math.max(0, dailyMean * day + z * Math.hypot(dailySd * Math.sqrt(day), dailyMeanSd * day))
  const z90 = normalQuantile(0.95)
  const run = (z: number, arriving: readonly OnOrder[] = []) => walk({ today, lots, planned, arriving, used: by(z) })
  const likely = run(0)
  const withOrders = run(0, onOrder)
  // What is ordered today helps from the day on which it comes, and not before.
  const wait = Math.ceil(leadDays)
  const low = withOrders.left.findIndex((litres, day) => day >= wait && litres <= safetyStock)
  return {
    runsOutOn: { likely: likely.emptyOn, earliest: run(z90).emptyOn, latest: run(-z90).emptyOn },
    orderBy: low === -1 ? null : today + low - wait,
    expiring: likely.expiring,
  }
}

interface Walk {
  today: DayNumber
  lots: StockAheadQuestion['lots']
  planned: readonly PlannedUse[]
  arriving: readonly OnOrder[]
  /** Litres gone from today's morning to the end of the so-many-th day, planned ones apart. */
  used(day: number): Litres
}

/** Day by day: what is left on the morning of each, the first day that lacks, what grew too old. */
function walk({ today, lots, planned, arriving, used }: Walk) {
  const shelf = lots.map((lot) => ({ ...lot })).sort(soonest)
  const expiring: StockAhead['expiring'] = []
  const left: Litres[] = []
  let emptyOn: DayNumber | null = null
  let gone = 0
  for (let day = 0; day <= daysAhead; day += 1) {
    const on = today + day
    for (const { litres, expectedOn } of arriving) {
      // What is late is expected any day: today's morning.
      if (Math.max(today, expectedOn) === on) shelf.push({ lot: null, litres, expiresOn: null, receivedOn: on })
    }
    for (const lot of shelf) {
      if (lot.expiresOn === null || lot.expiresOn > on || lot.litres <= 0) continue
      if (lot.litres >= 0.5) expiring.push({ lot: lot.lot, litres: lot.litres, on: lot.expiresOn })
      lot.litres = 0
    }
    left.push(shelf.reduce((sum, { litres }) => sum + litres, 0))
    const until = Math.max(gone, used(day + 1))
    const needed = until - gone + plannedOn(planned, on, today)
    gone = until
    if (take(shelf, needed) > 1e-9 && emptyOn === null) emptyOn = on
  }
  return { emptyOn, left, expiring }
}

/** Planned for the day; what was planned for days gone by and never done is still to come, today. */
const plannedOn = (planned: readonly PlannedUse[], on: DayNumber, today: DayNumber) =>
  planned.reduce((sum, use) => (Math.max(today, use.on) === on ? sum + use.litres : sum), 0)

/** @returns litres that were not there */
function take(shelf: { litres: Litres }[], litres: Litres): Litres {
  let needed = litres
  for (const lot of shelf) {
    const taken = Math.min(lot.litres, needed)
    lot.litres -= taken
    needed -= taken
  }
  return needed
}

const soonest = (a: Pick<StockLot, 'expiresOn' | 'receivedOn'>, b: Pick<StockLot, 'expiresOn' | 'receivedOn'>) =>
  (a.expiresOn ?? Number.MAX_SAFE_INTEGER) - (b.expiresOn ?? Number.MAX_SAFE_INTEGER) || a.receivedOn - b.receivedOn
