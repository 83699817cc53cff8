import {
  advise,
  type Reader,
  type SumpStanding,
  sayConcentration,
  sayCount,
  sayPercent,
  sayReasons,
  sayVolume,
  standingAfter,
} from '@sumpbook/fluid'
import { daysBetween } from '../journal/calendar.ts'
import { utc } from '../journal/order.ts'
import type { Reading } from '../schema/entries/index.ts'
import type { Sump } from '../schema/things/index.ts'
import { readThings } from '../setup/read-things.ts'
import type { ThingHistory, Things } from '../setup/things.ts'
import type { JournalReader } from '../store/store.ts'
import { benchOf } from './bench.ts'
import { cartOf, handoverOf, ledeOf } from './cart.ts'
import { byConsequence, conditionOf, daysUntilUnread, inWalkingOrder, type Judged } from './condition.ts'
import type { SumpStory } from './events.ts'
import { readStories } from './read-stories.ts'
import { sayReading } from './say-reading.ts'
import type { Condition, LastReading, Today, TodayItem } from './today.ts'

/** How a person wants to read: units other than the shop's, another language's number signs. */
export type TodayReader = Partial<Reader>

/**
 * What to do now: every sump's standing from its records, its recipe, and the list in order of consequence. Queries never
 * write; entries after `at` do not count.
 *
 * @param at the time of asking; the age of readings comes from it
 * @param until entries after it do not count; the time of asking unless given
 */
export async function readToday(
  journal: JournalReader,
  { at, until = at, reader = {} }: { at: Date; until?: Date; reader?: TodayReader },
): Promise<Today> {
  const history = await readThings(journal)
  const things = history.at(at.toISOString())
  const { stories, recent } = await readStories(journal, history, until)
  const context: Context = { things, history, at: at.toISOString(), reader: { units: things.shop.units, ...reader } }
  const items = [...things.sump.values()]
    .flatMap((sump) => {
      const story = stories.get(sump.id)
      return story === undefined ? [] : [itemOf(sump, story, context)]
    })
    .sort(byConsequence)
  const listed = items.filter(({ condition }) => condition !== 'in-order' && condition !== 'straight-oil')
  const cart = cartOf(listed)
  const { name, timeZone, units } = things.shop
  return {
    at: context.at,
    shop: { name, timeZone, units },
    lede: ledeOf(listed, cart, handoverOf(recent, at), context.reader),
    cart,
    items: listed,
    calm: items.filter((item) => !listed.includes(item)).sort(inWalkingOrder),
    quarantined: quarantinedOf(await journal.countBySump(), things),
  }
}

/** Entries that name sumps the book does not know (yet). */
const quarantinedOf = (counts: ReadonlyMap<string, number>, things: Things) =>
  [...counts].reduce((total, [sump, count]) => (things.sump.has(sump) ? total : total + count), 0)

interface Context {
  things: Things
  history: ThingHistory
  at: string
  reader: Reader
}

function itemOf(sump: Sump, story: SumpStory, context: Context): TodayItem {
  const { things, at, reader } = context
  const bench = benchOf(sump, story, things, at)
  const standing = standingAfter(story.events)
  const advice = advise(standing, bench, reader)
  const fluid = things.fluid.get(story.fluid)
  const item = {
    ...advice,
    action: advice.recipe.action,
    sump: sump.id,
    name: sump.name,
    place: sump.place ?? null,
    order: sump.order ?? null,
    fluid: { id: story.fluid, name: fluid?.name ?? story.fluid, class: fluid?.class ?? null },
    bench,
    ...standing,
    lastStrength: lastOf(story.lastStrength, 'strength', story.lastConcentration, reader),
    lastLevel: lastOf(story.lastLevel, 'level', null, reader),
    dataAt: story.dataAt,
  }
  const ageDays = story.lastStrength === null ? null : daysBetween(utc(story.lastStrength.at), at, things.shop.timeZone)
  const condition = conditionOf(item, ageDays)
  return {
    ...item,
    words: condition === 'unread' ? { ...item.words, headline: 'Read it', how: '', outcome: '' } : item.words,
    condition,
    sentence: standingWords(standing, bench, reader),
    why: whyOf(item, condition, ageDays, reader),
  }
}

function lastOf(
  entry: Reading | null,
  what: 'strength' | 'level',
  concentration: number | null,
  reader: Reader,
): LastReading | null {
  if (entry === null) return null
  const { id, at, by = null } = entry
  return { entry: id, at: utc(at), by, text: sayReading(entry, what, reader), concentration }
}

function standingWords({ concentration, volume }: SumpStanding, bench: TodayItem['bench'], reader: Reader): string {
  if (bench.class === 'straight-oil') return 'A straight oil: no water, no mix.'
  const strength =
    concentration === null ? 'Strength not known' : `Stands at ${sayConcentration(concentration, reader)}`
  const mark = bench.fillVolume === null ? '' : ` of ${sayVolume(bench.fillVolume, reader)}`
  return `${strength}${volume === null ? ', level not known' : ` in ${sayVolume(volume.mean, reader)}${mark}`}.`
}

function whyOf(item: Judged, condition: Condition, ageDays: number | null, reader: Reader): string {
  const parts: string[] = []
  const { concentration, bench } = item
  if (concentration !== null && bench.band !== null) {
    const band = `${sayPercent(bench.band.low, reader)} to ${sayPercent(bench.band.high, reader)}`
    if (condition === 'lean') parts.push(`Now ${sayConcentration(concentration, reader)}, under its band of ${band}.`)
    else if (condition === 'rich')
      parts.push(`Now ${sayConcentration(concentration, reader)}, above its band of ${band}.`)
    else parts.push(`Now ${sayConcentration(concentration, reader)}; its band is ${band}.`)
  }
  // Lean and rich are said above, with the figures.
  parts.push(...sayReasons(item.recipe.because.filter((reason) => reason !== 'lean' && reason !== 'rich')))
  if (item.lastStrength !== null && ageDays !== null && ageDays > daysUntilUnread) {
    parts.push(`The last reading is ${sayCount(ageDays, 'day', 'days')} old: read it again before pouring.`)
  }
  return parts.join(' ')
}
