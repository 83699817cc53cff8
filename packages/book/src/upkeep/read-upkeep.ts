import { dueDay, type Punctuality, punctuality, say, sayUpkeep } from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { calendarOf } from '../estimate/calendar-of.ts'
import { dayNumber, dayText } from '../estimate/shop-clock.ts'
import type { UpkeepTask } from '../schema/things/upkeep-task.ts'
import type { Things } from '../setup/things.ts'
import { doneDays, readDone } from './done.ts'
import { proposedTasks } from './proposals.ts'
import type { Upkeep, UpkeepLine } from './upkeep-types.ts'

/** As far back as it is looked whether a task slips. */
const daysBack = 730
const dayMs = 86_400_000

/** When each task of the shop is due. Queries never write. */
export async function readUpkeep(
  { journal, things: readThings }: Pick<BookParts, 'journal' | 'things'>,
  { at, until = at }: { at: Date; until?: Date },
): Promise<Upkeep> {
  const history = await readThings()
  const things = history.at(until.toISOString())
  const { clock, calendar } = calendarOf(history)
  const today = Math.floor(clock.at(at.getTime()))
  const since = new Date(at.getTime() - daysBack * dayMs).toISOString()
  const done = await readDone(journal, { since, until: until.toISOString() })
  const lines = (things.shop.upkeep ?? []).map((task): UpkeepLine => {
    const times = doneDays(task, done, clock)
    const last = times.at(-1) ?? null
    const from = task.from === undefined ? today : dayNumber(task.from)
    const due = hasWork(calendar)
      ? dueDay({ lastOn: last?.day ?? null, everyDays: task.everyDays, from }, calendar)
      : today
    const kept = hasWork(calendar)
      ? punctuality(
          times.map(({ day }) => day),
          task.everyDays,
          calendar,
        )
      : noTimes
    const said = {
      everyDays: task.everyDays,
      sinceDays: last === null ? null : today - last.day,
      dueInDays: due - today,
    }
    return {
      ...task,
      name: nameOf(task, things),
      lastOn: last === null ? null : dayText(last.day),
      lastBy: last?.by ?? null,
      dueOn: dayText(due),
      isDue: due <= today,
      punctuality: kept,
      sentence: sayUpkeep({ ...said, ...kept }),
    }
  })
  return {
    at: at.toISOString(),
    tasks: lines.sort((a, b) => compare(a.dueOn, b.dueOn) || compare(a.name, b.name) || compare(a.id, b.id)),
    proposals: proposedTasks(things, done, clock),
  }
}

const noTimes: Punctuality = { times: 0, late: 0, medianDaysLate: null, slipping: null }
/** A shop that never works has no day to put a task on. */
const hasWork = ({ workDays }: { workDays: readonly number[] }) => workDays.length > 0

function nameOf({ sump, about }: UpkeepTask, things: Things): string {
  if (sump !== undefined) return things.sump.get(sump)?.name ?? sump
  const { kind, id = '' } = about ?? { kind: 'shop' }
  if (kind === 'shop' || kind === 'stock' || kind === 'waste') return say('The shop')
  return things[kind].get(id)?.name ?? id
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
