import {
  advise,
  type Reader,
  type SumpStanding,
  sayConcentration,
  sayCount,
  sayList,
  sayPercent,
  sayVolume,
  standingAfter,
} from '@sumpbook/fluid'
import { daysBetween } from '../journal/calendar.ts'
import { utc } from '../journal/order.ts'
import { isQuarantined } from '../journal/references.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Entry, Reading } from '../schema/entries/index.ts'
import type { Sump } from '../schema/things/index.ts'
import { readThings } from '../setup/read-things.ts'
import type { ThingHistory, Things } from '../setup/things.ts'
import type { JournalReader } from '../store/store.ts'
import { benchOf } from './bench.ts'
import { type SumpStory, tellStories } from './events.ts'
import { sayReading } from './say-reading.ts'
import type { Cart, Condition, Today, TodayItem } from './today.ts'

/** A week without a reading: public guidance asks for a weekly check of concentration (DGUV Regel 109-003, Annex 3). */
const daysUntilUnread = 7
/** A fill of this share of the mark or more is worth a walk (common practice, no source). */
const worthAWalk = 0.1

/** How a person wants to read: units other than the shop's, another language's number signs. */
export type TodayReader = Partial<Reader>

/**
 * What to do now: every sump's standing from its records, its recipe, and the list in order of consequence. Queries never
 * write; entries after `at` do not count.
 *
 * @param at the time of asking; the time of day and age of readings come from it
 */
export async function readToday(
  journal: JournalReader,
  { at, reader = {} }: { at: Date; reader?: TodayReader },
): Promise<Today> {
  const [history, entries, voids] = await Promise.all([
    readThings(journal),
    journal.entries({ order: 'time', until: at.toISOString() }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const standing = entries.filter(({ id }) => !withdrawn.has(id)).map(({ body }) => JSON.parse(body) as Entry)
  const things = history.at()
  const context: Context = { things, history, at: at.toISOString(), reader: { units: things.shop.units, ...reader } }
  const stories = tellStories(standing, history)
  const items = [...things.sump.values()]
    .map((sump) => itemOf(sump, stories.get(sump.id)!, context))
    .sort(byConsequence)
  const listed = items.filter(({ condition }) => condition !== 'in-order' && condition !== 'straight-oil')
  const cart = cartOf(listed)
  const { name, timeZone, units } = things.shop
  return {
    at: context.at,
    shop: { name, timeZone, units },
    lede: ledeOf(listed, cart, handoverOf(standing), context.reader),
    cart,
    items: listed,
    calm: items.filter((item) => !listed.includes(item)).sort(inWalkingOrder),
    quarantined: standing.filter((entry) => isQuarantined(entry, things)).length,
  }
}

interface Context {
  things: Things
  history: ThingHistory
  at: string
  reader: Reader
}

function itemOf(sump: Sump, story: SumpStory, context: Context): TodayItem {
  const { things, at, reader } = context
  const bench = benchOf(sump, story.fluid, things, at)
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
    lastStrength: lastOf(story.lastStrength, 'strength', reader),
    lastLevel: lastOf(story.lastLevel, 'level', reader),
    dataAt: story.dataAt,
  }
  const ageDays = story.lastStrength === null ? null : daysBetween(utc(story.lastStrength.at), at, things.shop.timeZone)
  const condition = conditionOf(item, ageDays)
  return {
    ...item,
    condition,
    sentence: standingWords(standing, bench, reader),
    why: whyOf(item, condition, ageDays, reader),
  }
}

function lastOf(entry: Reading | null, what: 'strength' | 'level', reader: Reader) {
  if (entry === null) return null
  return { entry: entry.id, at: utc(entry.at), by: entry.by ?? null, text: sayReading(entry, what, reader) }
}

type Judged = Omit<TodayItem, 'condition' | 'sentence' | 'why'>

function conditionOf({ recipe, concentration, bench, volume }: Judged, ageDays: number | null): Condition {
  const { because, add, action } = recipe
  if (action === 'refuse') return 'straight-oil'
  if (because.includes('below-suction')) return 'below-suction'
  if (because.includes('above-brim')) return 'over-full'
  if (action === 'measure-first') return 'measure-first'
  const { low = 0, high = 100 } = bench.band ?? {}
  if (concentration !== null && concentration.mean < low) return 'lean'
  if (concentration !== null && concentration.mean > high) return 'rich'
  if (volume !== null && add !== null && add.volume >= worthAWalk * bench.fillVolume!) return 'low-level'
  return ageDays === null || ageDays > daysUntilUnread ? 'unread' : 'in-order'
}

const consequence: Record<Condition, number> = {
  'below-suction': 0,
  'over-full': 1,
  lean: 2,
  rich: 3,
  'measure-first': 4,
  'low-level': 5,
  unread: 6,
  'in-order': 7,
  'straight-oil': 8,
}

/** The condition first; within it how far outside its band, in widths of the band; then the walk. */
function byConsequence(a: TodayItem, b: TodayItem): number {
  return consequence[a.condition] - consequence[b.condition] || distance(b) - distance(a) || inWalkingOrder(a, b)
}

function distance({ concentration, bench: { band } }: TodayItem): number {
  if (concentration === null || band === null) return 0
  const outside = Math.max(band.low - concentration.mean, concentration.mean - band.high, 0)
  return outside / Math.max(band.high - band.low, 0.1)
}

/** In the order of the round, then by name, numbers in names by their size. */
export function inWalkingOrder(a: Pick<TodayItem, 'order' | 'name'>, b: Pick<TodayItem, 'order' | 'name'>): number {
  const byOrder = (a.order ?? Number.POSITIVE_INFINITY) - (b.order ?? Number.POSITIVE_INFINITY)
  return byOrder !== 0 && !Number.isNaN(byOrder) ? byOrder : a.name.localeCompare(b.name, 'en', { numeric: true })
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
  parts.push(
    ...item.words.because.filter((sentence) => sentence !== 'Under its band.' && sentence !== 'Above its band.'),
  )
  if (item.lastStrength !== null && ageDays !== null && ageDays > daysUntilUnread) {
    parts.push(`The last reading is ${sayCount(ageDays, 'day', 'days')} old: read it again before pouring.`)
  }
  return parts.join(' ')
}

function cartOf(items: readonly TodayItem[]): Cart {
  const waters = new Map<string, Cart['waters'][number]>()
  const concentrates = new Map<string, Cart['concentrates'][number]>()
  for (const { recipe, bench, fluid, action } of items) {
    if (recipe.add === null || action === 'change') continue
    const id = recipe.add.waters[0]?.id ?? null
    const name = bench.waters.find((water) => water.id === id)?.name ?? 'water'
    const water = waters.get(name) ?? { id, name, volume: 0 }
    waters.set(name, { ...water, volume: water.volume + recipe.add.water })
    if (recipe.add.concentrate === 0) continue
    const concentrate = concentrates.get(fluid.id) ?? { fluid: fluid.id, name: fluid.name, litres: 0 }
    concentrates.set(fluid.id, { ...concentrate, litres: concentrate.litres + recipe.add.concentrate })
  }
  return { waters: [...waters.values()], concentrates: [...concentrates.values()] }
}

/** The last note of the last two days. */
function handoverOf(entries: readonly Entry[]): string | null {
  const last = entries.findLast((entry) => entry.kind === 'handover')
  return last?.kind === 'handover' ? (last.text ?? null) : null
}

function ledeOf(
  items: readonly TodayItem[],
  { waters, concentrates }: Cart,
  handover: string | null,
  reader: Reader,
): string {
  const pours = items.filter(({ recipe }) => recipe.add !== null || recipe.drawOff > 0).length
  const reads = items.length - pours
  const toDo = [
    pours > 0 ? sayCount(pours, 'sump to fill', 'sumps to fill') : '',
    reads > 0 ? sayCount(reads, 'to read', 'to read') : '',
  ].filter((part) => part !== '')
  const carried = [
    ...waters.map(({ name, volume }) => `${sayVolume(volume, reader)} of ${lowerFirst(name)}`),
    ...concentrates.map(({ name, litres }) => `${sayVolume(litres, reader)} of ${name} concentrate`),
  ]
  return [
    toDo.length === 0
      ? 'Nothing to do: every sump was read within the week and is in its band.'
      : `Today: ${sayList(toDo)}.`,
    carried.length === 0 ? '' : `For the cart: ${sayList(carried)}.`,
    handover === null ? '' : `Last shift’s note: “${handover}”`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}

const lowerFirst = (name: string) => (/^\p{Lu}\p{Ll}/u.test(name) ? name[0]!.toLowerCase() + name.slice(1) : name)
