import {
  dayNumber,
  dayText,
  say,
  sayCalendarDay,
  sayOnDate,
  sayTerm,
  sayVolume,
  sayWaste,
  unitsHere,
} from '@sumpbook/fluid'
import type { Due } from '../today/due.ts'
import type { DueSource } from '../today/due-sources.ts'
import type { ContainerNow } from './containers-now.ts'
import { pickupLines, wasteOfShop } from './read-waste.ts'

/** Days before the end of a term, or before a container is full, from which on a carrier is called; common practice, no source. */
export const noticeDays = 14
/** Share of the capacity from which on a container counts as nearly full. */
const nearlyFull = 90

/** Terms that end, containers that are full, pickups without their document. */
export const dueWaste: DueSource = async (parts, { at, until, reader: asked }) => {
  const { containers, things, today, dayAt } = await wasteOfShop(parts, { at, until })
  const reader = { units: unitsHere(things.shop), ...asked, today }
  return containers.flatMap((one) => [
    ...termDue(one, reader),
    ...fullDue(one, reader),
    ...documentDue(one, reader, (instant) => dayText(dayAt(instant))),
  ])
}

type DueReader = Parameters<typeof sayWaste>[1]

const dueOf = (
  { container }: ContainerNow,
  due: Pick<Due, 'key' | 'headline' | 'why' | 'dueOn' | 'consequence'> & Partial<Due>,
): Due => ({
  kind: 'waste',
  sump: null,
  about: { kind: 'waste', id: container.id },
  name: container.name,
  exempt: false,
  cautions: [],
  page: '/stock/waste',
  finish: null,
  ...due,
})

/** A lawful term is under no cap, and cannot be put off. */
function termDue(one: ContainerNow, reader: DueReader): Due[] {
  const { now, container } = one
  const { term } = container
  if (now.clock.outcome !== 'running' || term === undefined || now.clock.daysLeft > noticeDays) return []
  const { endsOn, daysLeft, startedOn } = now.clock
  return [
    dueOf(one, {
      key: `waste:term:${container.id}:${dayText(startedOn)}`,
      headline:
        daysLeft < 0
          ? say('Have {container} fetched: its time ended {onDay}', {
              container: container.name,
              onDay: sayOnDate(endsOn, reader),
            })
          : say('Have {container} fetched by {day}', {
              container: container.name,
              day: sayCalendarDay(endsOn, reader),
            }),
      why: sayTerm(now, { ...term, source: term.source ?? null, from: term.from ?? 'first' }, reader),
      dueOn: dayText(endsOn - noticeDays),
      consequence: daysLeft < 0 ? 2 : 4,
      exempt: true,
    }),
  ]
}

function fullDue(one: ContainerNow, reader: DueReader): Due[] {
  const { now, container } = one
  const isSoon = now.fullOn !== null && now.fullOn <= reader.today + noticeDays
  if (now.full === null || now.litres === 0 || (now.full < nearlyFull && !isSoon)) return []
  // The line of its term says the same.
  if (now.clock.outcome === 'running' && now.clock.daysLeft <= noticeDays) return []
  return [
    dueOf(one, {
      key: `waste:full:${container.id}`,
      headline: say('Call the carrier for {container}', { container: container.name }),
      why: sayWaste({ name: container.name, now, capacity: container.capacity ?? null }, reader),
      dueOn: dayText(Math.min(reader.today, (now.fullOn ?? reader.today) - noticeDays)),
      consequence: now.over > 0 || now.full >= 100 ? 4 : 6,
    }),
  ]
}

function documentDue(one: ContainerNow, reader: DueReader, day: (at: string) => string): Due[] {
  return pickupLines(one, reader, day)
    .filter(({ document, on }) => document === null && on < dayText(reader.today))
    .map(({ entry, on, litres }) =>
      dueOf(one, {
        key: `waste:document:${entry}`,
        headline: say('Write down the document of the pickup {onDay}', { onDay: sayOnDate(dayNumber(on), reader) }),
        why:
          litres === null
            ? say('Waste left {container} without a document’s number in the book.', { container: one.container.name })
            : say('{volume} left {container} without a document’s number in the book.', {
                volume: sayVolume(litres, reader),
                container: one.container.name,
              }),
        dueOn: on,
        consequence: 7,
      }),
    )
}
