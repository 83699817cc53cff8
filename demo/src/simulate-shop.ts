import type { BookDocument } from './book-document.ts'
import { planChecks } from './people/checks.ts'
import { planCleanouts } from './people/cleanout.ts'
import { planComplaint } from './people/complaint.ts'
import { planDoses } from './people/doses.ts'
import { planHandovers } from './people/handover.ts'
import { planOnce } from './people/once.ts'
import { planRounds } from './people/round.ts'
import { planStart } from './people/start.ts'
import { planStock } from './people/stock.ts'
import { planUpkeep } from './people/upkeep.ts'
import { planPickups, planSludge } from './people/waste.ts'
import { planWeeks } from './people/weekly.ts'
import { additives } from './shop/additives.ts'
import { costs } from './shop/costs.ts'
import { containers, instruments, meters, mixer } from './shop/equipment.ts'
import { fluids } from './shop/fluids.ts'
import { guidance } from './shop/guidance.ts'
import { sumpPlans } from './shop/sumps.ts'
import { upkeepTasks } from './shop/upkeep.ts'
import { wasteContainers } from './shop/waste.ts'
import { waters } from './shop/waters.ts'
import { type ShopRun, shopAtStart, timeZone } from './simulate/shop-run.ts'
import { advance } from './simulate/sump-run.ts'
import type { SumpTruth } from './simulate/sump-truth.ts'

/** Which shop, and up to when. */
export interface ShopAsked {
  /** A whole number from 0, below 2^32; the same seed gives the same shop. Default 1. */
  seed?: number
  /** RFC 3339 with offset: the last entry lies shortly before it. */
  until: string
}

/** What the shop wrote down, and what was really in its sumps at `until`. */
export interface SimulatedShop {
  book: BookDocument
  truth: ReadonlyMap<string, SumpTruth>
}

/**
 * A year and a fortnight of an invented machine shop: twelve sumps, each a mass balance by the hour (evaporation with weather
 * and shift, carry-off that jumps with the job, depletion, tramp oil, bacteria), and the people who read, pour and
 * forget. Its model is its own; it shares nothing with what estimates sumps from their records.
 *
 * @throws {RangeError} a seed that is no whole number from 0 below 2^32, or `until` without offset
 */
export function simulateShop({ seed = 1, until }: ShopAsked): SimulatedShop {
  if (!(Number.isInteger(seed) && seed >= 0 && seed < 2 ** 32)) {
    throw new RangeError(`seed must be a whole number from 0 and below 2^32, not ${seed}`)
  }
  const shop = shopAtStart(seed, until)
  for (const plan of plans) plan(shop)
  shop.agenda.runTo(shop.days.untilMs)
  for (const run of shop.sumps) advance(run, shop, shop.days.untilMs)
  return { book: bookOf(shop), truth: new Map(shop.sumps.map(({ plan, truth }) => [plan.document.id, truth])) }
}

const plans = [
  planStart,
  planStock,
  planOnce,
  planCleanouts,
  planComplaint,
  planDoses,
  planChecks,
  planUpkeep,
  planRounds,
  planWeeks,
  planSludge,
  planPickups,
  planHandovers,
]

function bookOf({ calendar, journal, days }: ShopRun): BookDocument {
  const book: BookDocument = {
    format: 'sumpbook-book/1',
    shop: {
      name: 'Example shop',
      timeZone,
      units: 'metric',
      currency: 'EUR',
      costs,
      workDays: [1, 2, 3, 4, 5],
      shutdowns: calendar.shutdowns,
      guidance,
      additives: [...additives],
      upkeep: [...upkeepTasks],
    },
    fluids: [...fluids],
    waters: [...waters],
    sumps: sumpPlans.map(({ document }) => document),
    containers,
    mixers: [mixer],
    instruments,
    meters,
    wasteContainers: [...wasteContainers],
    entries: journal.entriesUpTo(days.untilMs),
  }
  return structuredClone(book)
}
