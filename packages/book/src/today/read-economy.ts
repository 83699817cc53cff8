import type { BookParts } from '../book-parts.ts'
import { calendarOf } from '../estimate/calendar-of.ts'
import { dayNumber } from '../estimate/shop-clock.ts'
import { readClaims } from '../jobs/read-claims.ts'
import type { Things } from '../setup/things.ts'
import type { Due } from './due.ts'
import { type Economy, placesOf, shareOut } from './economy.ts'
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
  /** Who asks; null where nobody is told apart. */
  person: string | null
  things: Things
  items: readonly SumpItem[]
  due: readonly Due[]
}

/** Reads what is needed to tell what is new on a list, and shares it out. */
export async function readEconomy(
  parts: BookParts,
  { at, until, person, things, items, due }: ListedThings,
): Promise<{ shift: Today['shift']; economy: Economy }> {
  const { clock } = calendarOf(await parts.things())
  const { began, endsAt } = shiftsAt(at.getTime(), { clock, things, back: shiftsBack })
  const start = began[0]!
  const shiftDays = clock.at(endsAt) - clock.at(start)
  const [snoozed, { touches, pouredAt }, dueAtStart, atStart] = await Promise.all([
    snoozedAt(parts.journal, { at, until, timeZone: things.shop.timeZone }),
    touchedBetween(parts.journal, { since: began.at(-1)!, from: start, until: until.getTime() }),
    dueThen(parts, start),
    sumpsThen(parts, { ms: start, shiftDays }),
  ])
  const ids = new Set([
    ...items.map(({ sump }) => sump),
    ...touches.map(({ sump }) => sump),
    ...[...atStart].flatMap(([id, { condition }]) => (condition === 'in-order' ? [] : [id])),
  ])
  const starts = [atStart]
  for (const ms of began.slice(1)) starts.push(await sumpsThen(parts, { ms, shiftDays, ids }))
  const input = {
    at: at.getTime(),
    began,
    items,
    due,
    sumpCount: things.sump.size,
    starts,
    dueThen: dueAtStart,
    dayStart: (day: string) => clock.instantOf(dayNumber(day)),
    pouredAt,
    snoozed,
    taken: await takenByOthers(parts, { until, person }),
  }
  const places = await placesOf(input, touches, async ({ sump, ms }) =>
    (await sumpsThen(parts, { ms, shiftDays, ids: new Set([sump]) })).get(sump),
  )
  const economy = shareOut({ ...input, places })
  return { shift: { began: instant(start), ends: instant(endsAt) }, economy }
}

/** What others have claimed is no news to the one who asks; without a name everybody is. */
async function takenByOthers(
  { journal }: BookParts,
  { until, person }: { until: Date; person: string | null },
): Promise<Set<string>> {
  const claims = person === null ? [] : [...(await readClaims(journal, { until })).values()]
  return new Set(claims.filter(({ by }) => by !== person).map(({ key }) => key))
}

const instant = (ms: number) => new Date(ms).toISOString()
