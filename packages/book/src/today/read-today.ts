import { type Reader, type ShopEstimate, sayLater, sayRound } from '@sumpbook/fluid'
import type { Checkpoints } from '../estimate/checkpoints.ts'
import { mapInTurns } from '../in-turns.ts'
import { readTodayClaims } from '../jobs/claimed-today.ts'
import type { ThingHistory, Things } from '../setup/things.ts'
import type { JournalReader } from '../store/store.ts'
import { cartOf, ledeOf, readHandover } from './cart.ts'
import { byConsequence, inWalkingOrder, isListed } from './condition.ts'
import { readDue } from './due-sources.ts'
import { lastReadings } from './last-readings.ts'
import { readEconomy } from './read-economy.ts'
import { sumpNow } from './sump-now.ts'
import type { SumpItem, Today } from './today.ts'

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
  /** Who asks: what others have claimed is no news to them. */
  person?: string | null
}

/**
 * What to do now: every sump as the estimate has it, its recipe, and the list in order of consequence, shared out so that nobody is
 * shown more new things in a shift than can be seen to ({@link shareOut}). Queries never write; entries after `at` do not count.
 */
export async function readToday(parts: BookParts, question: TodayQuestion): Promise<Today> {
  const { at, until = at, reader = {}, person = null } = question
  const { journal } = parts
  const [{ items: all, things }, due] = await Promise.all([
    readSumps(parts, { at, until, reader }),
    readDue(parts, { at, until, reader }),
  ])
  all.sort(byConsequence)
  const listed = all.filter(({ condition }) => isListed(condition))
  const { shift, economy } = await readEconomy(parts, { at, until, person, things, items: listed, due })
  const { items, round, later, putOff } = economy
  const claims = await readTodayClaims(parts, { at, until, reader })
  const cart = cartOf(items)
  const waiting = [...later.items, ...later.due].map(({ name }) => name)
  const { name, timeZone, units } = things.shop
  const sentence = round.length === 0 ? '' : sayRound(round.length)
  const folded = { round: round.length, putOff: putOff.items.length + putOff.due.length, due: economy.due.length }
  return {
    at: at.toISOString(),
    shop: { name, timeZone, units },
    lede: ledeOf(items, cart, folded, await readHandover(journal, { at, until }), { units, ...reader }),
    cart,
    shift,
    items: claims.pours(items),
    round: round.length === 0 ? null : { sentence, items: round.toSorted(inWalkingOrder) },
    later:
      waiting.length === 0
        ? null
        : { sentence: sayLater(waiting), items: claims.pours(later.items), due: claims.duties(later.due) },
    putOff,
    calm: all.filter(({ condition }) => !isListed(condition)).sort(inWalkingOrder),
    due: claims.duties(economy.due),
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
): Promise<{ items: SumpItem[]; things: Things }> {
  const { standing, sumps } = await checkpoints.standing(until.getTime(), sump)
  const read = await lastReadings(journal, await things(), { sumps, until: until.toISOString() })
  const asked = { at: at.toISOString(), reader: { units: standing.things.shop.units, ...reader } }
  const items = await mapInTurns(sumps, (one) => sumpNow(standing, one, read.get(one.id)!, asked))
  return { items, things: standing.things }
}

/** Entries that name sumps the book does not know (yet). */
const quarantinedOf = (counts: ReadonlyMap<string, number>, things: Things) =>
  [...counts].reduce((total, [sump, count]) => (things.sump.has(sump) ? total : total + count), 0)
