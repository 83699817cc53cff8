import { sayLater, sayRound, unitsHere } from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { readTodayClaims } from '../jobs/claimed-today.ts'
import { cartOf, ledeOf, readHandover } from './cart.ts'
import { byConsequence, inWalkingOrder, isListed } from './condition.ts'
import { readDue } from './due-sources.ts'
import { readEconomy } from './read-economy.ts'
import { readSumps, type TodayQuestion } from './read-sumps.ts'
import type { Today } from './today.ts'

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
    lede: ledeOf(items, cart, folded, await readHandover(journal, { at, until }), {
      units: unitsHere(things.shop),
      ...reader,
    }),
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
    quarantined: quarantinedOf(await journal.countBySump(new Set(things.sump.keys()))),
  }
}

/** Entries that name sumps the book does not know (yet). */
const quarantinedOf = (counts: ReadonlyMap<string, number>) => [...counts.values()].reduce((all, one) => all + one, 0)
