import { median, usualTasks } from '@sumpbook/fluid'
import type { ShopClock } from '../estimate/shop-clock.ts'
import type { UpkeepTask } from '../schema/things/upkeep-task.ts'
import type { Things } from '../setup/things.ts'
import { type DoneEntry, plain } from './done.ts'
import type { ProposedTask } from './upkeep-types.ts'

/** Upkeep of every sump, days (common practice, no source). */
const ofSump = [
  ['skim', usualTasks.skim, 7, 'skim'],
  ['basket', usualTasks.basket, 7, undefined],
  ['pumps', usualTasks.pumps, 91, undefined],
] as const

/**
 * What a shop with these sumps, mixers, instruments and waters usually does, and what its own records show to come back, where it has not been taken on
 * yet. Every interval is common practice without a source, or the median of the shop's own; the shop sets what it does.
 */
export function proposedTasks(things: Things, done: readonly DoneEntry[], clock: ShopClock): ProposedTask[] {
  const known = (things.shop.upkeep ?? []).map(likeness)
  const proposals = [...fromRecords(things, done, clock), ...usualProposals(things)]
  const seen = new Set(known)
  return proposals.filter((task) => {
    const like = likeness(task)
    if (seen.has(like)) return false
    seen.add(like)
    return true
  })
}

/** Two tasks that one entry finishes are one. */
const likeness = ({ sump, about, task, counts = 'upkeep' }: UpkeepTask): string =>
  JSON.stringify([sump ?? null, about?.kind ?? null, about?.id ?? null, counts === 'upkeep' ? plain(task) : counts])

function usualProposals(things: Things): ProposedTask[] {
  const because = 'common practice'
  const sumps = [...things.sump.values()].flatMap(({ id: sump, name, kind }) => [
    ...ofSump.map(([word, task, days, counts]): ProposedTask => {
      // Grinding and fine grit fill a strainer in days; who grinds is only told by the name.
      const everyDays = word === 'basket' && /grind/i.test(name) ? 2 : days
      return {
        id: `${word}:${sump}`,
        task,
        sump,
        everyDays,
        name,
        because,
        ...(counts === undefined ? {} : { counts }),
      }
    }),
    ...(kind === 'central'
      ? [{ id: `filter:${sump}`, task: usualTasks.filter, sump, everyDays: 28, name, because } as const]
      : []),
  ])
  const of = (kind: 'mixer' | 'instrument' | 'water', task: string, everyDays: number, counts: 'check' | 'analysis') =>
    [...things[kind].values()].map(
      ({ id, name }): ProposedTask => ({
        id: `${counts}:${kind}:${id}`,
        task,
        about: { kind, id },
        everyDays,
        counts,
        name,
        because,
      }),
    )
  return [
    ...sumps,
    ...of('mixer', usualTasks.mixer, 7, 'check'),
    ...of('instrument', usualTasks.instrument, 7, 'check'),
    ...of('water', usualTasks.water, 182, 'analysis'),
    ...[...things.water.values()]
      .filter(({ kind }) => kind === 'reverse-osmosis' || kind === 'deionised')
      .map(
        ({ id, name }): ProposedTask => ({
          id: `purifier:${id}`,
          task: usualTasks.purifier,
          about: { kind: 'water', id },
          everyDays: 91,
          name,
          because,
        }),
      ),
  ]
}

/** So many times make a habit. */
const leastTimes = 3

/** Upkeep that was written down again and again, in the rhythm in which it was. */
function fromRecords(things: Things, done: readonly DoneEntry[], clock: ShopClock): ProposedTask[] {
  const upkeep = done.filter(
    (entry) => entry.kind === 'upkeep' && entry.task !== undefined && things.sump.has(entry.sump),
  )
  const groups = Map.groupBy(upkeep, (entry) => (entry.kind === 'upkeep' ? `${entry.sump} ${plain(entry.task!)}` : ''))
  return [...groups.values()].flatMap((entries): ProposedTask[] => {
    const last = entries.at(-1)!
    if (entries.length < leastTimes || last.kind !== 'upkeep') return []
    const days = [...new Set(entries.map(({ at }) => Math.floor(clock.at(Date.parse(at)))))]
    if (days.length < leastTimes) return []
    const between = days.slice(1).map((day, i) => day - days[i]!)
    const everyDays = Math.min(1000, Math.max(1, Math.round(median(between))))
    const name = things.sump.get(last.sump)!.name
    return [
      {
        id: `own:${last.sump}:${plain(last.task!)}`.slice(0, 200),
        task: last.task!,
        sump: last.sump,
        everyDays,
        name,
        because: 'done before',
      },
    ]
  })
}
