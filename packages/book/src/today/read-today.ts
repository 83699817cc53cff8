import type { Reader, ShopEstimate } from '@sumpbook/fluid'
import type { Checkpoints } from '../estimate/checkpoints.ts'
import { mapInTurns } from '../in-turns.ts'
import type { ThingHistory, Things } from '../setup/things.ts'
import type { JournalReader } from '../store/store.ts'
import { cartOf, ledeOf, readHandover } from './cart.ts'
import { byConsequence, inWalkingOrder } from './condition.ts'
import { readDue } from './due-sources.ts'
import { lastReadings } from './last-readings.ts'
import { sumpNow } from './sump-now.ts'
import type { Today, TodayItem } from './today.ts'

/** How a person wants to read: units other than the shop's, another language's number signs. */
export type TodayReader = Partial<Reader>

/** What a book is read from. */
export interface BookParts {
  journal: JournalReader
  checkpoints: Checkpoints<ShopEstimate>
  things: () => Promise<ThingHistory>
}

/** When is asked, and for whom. */
export interface TodayQuestion {
  /** The time of asking; what is due comes from it. */
  at: Date
  /** Entries after it do not count; the time of asking unless given. */
  until?: Date
  reader?: TodayReader
}

/**
 * What to do now: every sump as the estimate has it, its recipe, and the list in order of consequence. Queries never write;
 * entries after `at` do not count.
 */
export async function readToday(parts: BookParts, { at, until = at, reader = {} }: TodayQuestion): Promise<Today> {
  const { journal } = parts
  const [{ items, things }, due] = await Promise.all([
    readSumps(parts, { at, until, reader }),
    readDue(parts, { at, until, reader }),
  ])
  items.sort(byConsequence)
  const listed = items.filter(({ condition }) => condition !== 'in-order' && condition !== 'straight-oil')
  const cart = cartOf(listed)
  const { name, timeZone, units } = things.shop
  return {
    at: at.toISOString(),
    shop: { name, timeZone, units },
    lede: ledeOf(listed, cart, await readHandover(journal, { at, until }), { units, ...reader }),
    cart,
    items: listed,
    calm: items.filter((item) => !listed.includes(item)).sort(inWalkingOrder),
    due,
    quarantined: quarantinedOf(await journal.countBySump(), things),
  }
}

/**
 * Every sump as it stands, or one alone.
 *
 * @throws {BookError} `not-found` a sump the book does not have
 */
export async function readSumps(
  { journal, checkpoints, things }: BookParts,
  { at, until = at, reader = {}, sump }: TodayQuestion & { sump?: string },
): Promise<{ items: TodayItem[]; things: Things }> {
  const { standing, sumps } = await checkpoints.standing(until.getTime(), sump)
  const read = await lastReadings(journal, await things(), { sumps, until: until.toISOString() })
  const asked = { at: at.toISOString(), reader: { units: standing.things.shop.units, ...reader } }
  const items = await mapInTurns(sumps, (one) => sumpNow(standing, one, read.get(one.id)!, asked))
  return { items, things: standing.things }
}

/** Entries that name sumps the book does not know (yet). */
const quarantinedOf = (counts: ReadonlyMap<string, number>, things: Things) =>
  [...counts].reduce((total, [sump, count]) => (things.sump.has(sump) ? total : total + count), 0)
