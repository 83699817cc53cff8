import { say, sayCautions } from '@sumpbook/fluid'
import { calendarOf } from '../estimate/calendar-of.ts'
import { dayText } from '../estimate/shop-clock.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { DueSource } from '../today/due-sources.ts'
import { givenDoses, isOf } from './given-doses.ts'
import { contradictionsOf } from './read-dose.ts'

/** A dose that went against its label is named for so long, or until somebody has answered for it. */
const namedDays = 28
const dayMs = 86_400_000

/** Doses that went in and go against their label: facts as they are, and named. The volume is the fill, for want of a better one of then. */
export const dueDoses: DueSource = async ({ journal, things: readThings }, { until, reader }) => {
  const history = await readThings()
  const things = history.at(until.toISOString())
  const additives = things.shop.additives ?? []
  if (additives.length === 0) return []
  const since = new Date(until.getTime() - 2 * namedDays * dayMs).toISOString()
  const { doses, chargedAt } = await givenDoses(journal, { since, until: until.toISOString() })
  if (doses.length === 0) return []
  const { clock } = calendarOf(history)
  const answered = await answeredEntries(journal, since, until.toISOString())
  const named = until.getTime() - namedDays * dayMs
  return [...Map.groupBy(doses, ({ sump }) => sump)].flatMap(([id, ofSump]) => {
    const sump = things.sump.get(id)
    if (sump === undefined) return []
    return additives.flatMap((additive) => {
      const charge = chargedAt.get(id)?.at(-1) ?? Number.NEGATIVE_INFINITY
      const given = ofSump.filter((one) => one.ms >= charge && isOf(one, additive))
      return contradictionsOf(given, additive, sump.fillVolume ?? null, reader).flatMap(({ entry, text }) => {
        const { ms } = given.find((one) => one.entry === entry)!
        if (ms < named || answered.has(entry)) return []
        return [
          {
            key: `dose:${entry}`,
            kind: 'dose' as const,
            sump: id,
            about: null,
            name: sump.name,
            headline: say('A dose of {additive} in {sump} goes against its label', {
              additive: additive.name,
              sump: sump.name,
            }),
            why: say('{fault} Set the entry aside if it was written wrong; else ask the supplier what follows.', {
              fault: text,
            }),
            dueOn: dayText(Math.floor(clock.at(ms))),
            consequence: 2,
            exempt: false,
            cautions: sayCautions(['additiveHandling', 'guidanceOnly']),
            page: `/sumps/${encodeURIComponent(id)}`,
            finish: { kind: 'verdict', entries: [entry], answer: 'seen to' },
          },
        ]
      })
    })
  })
}

async function answeredEntries(
  journal: Parameters<DueSource>[0]['journal'],
  since: string,
  until: string,
): Promise<Set<string>> {
  const [verdicts, voids] = await Promise.all([
    journal.entries({ kinds: ['verdict'], order: 'time', since, until }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const standing = verdicts.filter(({ id }) => !withdrawn.has(id))
  return new Set(standing.flatMap(({ body }) => (JSON.parse(body) as EntryOf<'verdict'>).entries ?? []))
}
