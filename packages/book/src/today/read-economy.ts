import { calendarOf } from '../estimate/calendar-of.ts'
import { dayNumber } from '../estimate/shop-clock.ts'
import type { Things } from '../setup/things.ts'
import type { Due } from './due.ts'
import { type Economy, shareOut } from './economy.ts'
import type { BookParts } from './read-today.ts'
import { dueThen, sumpsThen } from './shift-starts.ts'
import { shiftsAt } from './shifts.ts'
import { snoozedAt } from './snoozes.ts'
import type { SumpItem, Today } from './today.ts'
import { touchedBetween } from './touched.ts'

/** So many shifts before the one that runs are looked back upon: a week of one shift a day. */
const shiftsBack = 5

/** The list of an instant and the things of the shop then, to be shared out. */
export interface ListedThings {
  at: Date
  until: Date
  things: Things
  items: readonly SumpItem[]
  due: readonly Due[]
}

/** Reads what is needed to tell what is new on a list, and shares it out. */
export async function readEconomy(
  parts: BookParts,
  { at, until, things, items, due }: ListedThings,
): Promise<{ shift: Today['shift']; economy: Economy }> {
  const { clock } = calendarOf(await parts.things())
  const { began, endsAt } = shiftsAt(at.getTime(), { clock, things, back: shiftsBack })
  const start = began[0]!
  const shiftDays = clock.at(endsAt) - clock.at(start)
  const [snoozed, { touched, pouredAt }, dueAtStart, atStart] = await Promise.all([
    snoozedAt(parts.journal, { at, until, timeZone: things.shop.timeZone }),
    touchedBetween(parts.journal, { since: began.at(-1)!, from: start, until: until.getTime() }),
    dueThen(parts, start),
    sumpsThen(parts, { ms: start, shiftDays }),
  ])
  const ids = new Set([
    ...items.map(({ sump }) => sump),
    ...[...atStart].flatMap(([id, { condition }]) => (condition === 'in-order' ? [] : [id])),
  ])
  const starts = [atStart]
  for (const ms of began.slice(1)) starts.push(await sumpsThen(parts, { ms, shiftDays, ids }))
  const economy = shareOut({
    at: at.getTime(),
    began,
    items,
    due,
    sumpCount: things.sump.size,
    starts,
    dueThen: dueAtStart,
    dayStart: (day) => clock.instantOf(dayNumber(day)),
    touched,
    pouredAt,
    snoozed,
    taken: new Set(),
  })
  return { shift: { began: instant(start), ends: instant(endsAt) }, economy }
}

const instant = (ms: number) => new Date(ms).toISOString()
