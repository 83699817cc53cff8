import { say, sayCautions, sayFinding, sayList, sayStop, stopsFor } from '@sumpbook/fluid'
import { dayOf } from '../journal/calendar.ts'
import type { Due } from '../today/due.ts'
import type { DueSource } from '../today/due-sources.ts'
import type { Observed } from './answer-types.ts'
import { observedSince } from './observed.ts'

/** A sign that nobody answered for stays on the list this long (common practice, no source); in the journal it stays for good. */
const followedDays = 60

/** Signs of danger or complaint that no verdict has answered, a line for each sump. */
export const dueFollowUps: DueSource = async ({ journal, things: readThings }, { until }) => {
  const since = new Date(until.getTime() - followedDays * 86_400_000).toISOString()
  const observed = await observedSince(journal, { since, until: until.toISOString() })
  const things = (await readThings()).at(until.toISOString())
  const open = observed.filter(({ toFollowUp, answeredAt }) => toFollowUp.length > 0 && answeredAt === null)
  return [...Map.groupBy(open, ({ sump }) => sump)].map(([id, seen]) =>
    dueOf({ id, name: things.sump.get(id)?.name ?? id }, seen, things.shop.timeZone),
  )
}

function dueOf({ id, name }: { id: string; name: string }, seen: readonly Observed[], timeZone: string): Due {
  const signs = [...new Set(seen.flatMap(({ toFollowUp }) => toFollowUp))]
  const [first] = seen
  const stops = stopsFor(signs)
  const isHealth = stops.some(({ id }) => id === 'breathing' || id === 'skin and eyes')
  return {
    key: `health:${first!.entry}`,
    kind: 'health',
    sump: id,
    about: null,
    name,
    headline: say('See to {signs} at {name}', { signs: sayList(signs.map(sayFinding)), name }),
    why: say('It was written down and nobody has said yet what was done about it. A good reading does not answer it.'),
    dueOn: dayOf(first!.at, timeZone),
    consequence: 0,
    exempt: true,
    cautions: [...stops.map(sayStop), ...(isHealth ? sayCautions(['healthSurveillance']) : [])],
    page: `/sumps/${encodeURIComponent(id)}/why`,
    finish: null,
  }
}
