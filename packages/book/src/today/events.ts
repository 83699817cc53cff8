import {
  concentrationFromBrix,
  type SumpEvent,
  scaleOn,
  standingAfter,
  titrationDoubt,
  usualResolution,
  volumeDoubt,
} from '@sumpbook/fluid'
import { dayOf } from '../journal/calendar.ts'
import { rankOf, transferInRank, utc } from '../journal/order.ts'
import type { Entry, EntryOf, Reading } from '../schema/entries/index.ts'
import type { Fluid, Sump } from '../schema/things/index.ts'
import type { Value } from '../schema/values.ts'
import { litresSeen } from '../setup/brim.ts'
import type { ThingHistory, Things } from '../setup/things.ts'

/** A reading that would be more than concentrate: nothing is known but that it is wrong. */
const impossible = { mean: 100, sd: 50 }

/** One sump's part of the journal, from now on in canonical units. */
export interface SumpStory {
  sump: string
  /** The fluid of the last charge, else the sump's own. */
  fluid: string
  /** The lot of the last charge; null where nobody said. */
  lot: string | null
  events: SumpEvent[]
  lastStrength: Reading | null
  /** What that reading came to, by the scale of its day; null where that is not known. */
  lastConcentration: number | null
  lastLevel: Reading | null
  /** UTC, of the youngest entry that moved the balance. */
  dataAt: string | null
  /** Whether level and strength were both read, and every metered pour had a count before it: older entries would change nothing. */
  isSettled: boolean
}

/**
 * Reads the journal in the order of the shop's time and tells each sump's story: readings in percent and litres by the
 * factor, chart, dip table and mark of their day; pours by volume, meter or mark.
 *
 * @param entries those that stand, by (at, rank, id)
 */
export function tellStories(entries: readonly Entry[], history: ThingHistory): Map<string, SumpStory> {
  const stories = new Map<string, SumpStory>()
  const meterCounts = new Map<string, number>()
  for (const [id, sump] of history.at().sump) {
    stories.set(id, beginStory(id, sump.fluid))
  }
  for (const { entry, into } of stepsOf(entries)) {
    const subject = into ?? entry.sump
    const story = typeof subject === 'string' ? stories.get(subject) : undefined
    if (story === undefined) continue
    const event =
      into === null ? eventOf(entry, story, history.at(utc(entry.at)), meterCounts) : received(entry, stories)
    if (event === null) continue
    story.events.push(event)
    story.dataAt = utc(entry.at)
    if (entry.kind === 'addition' && entry.meter !== undefined && event.volume === null) story.isSettled = false
    if (event.kind === 'reading' && story.lastLevel !== null && isStrengthKnown(story)) story.isSettled = true
  }
  return stories
}

const beginStory = (sump: string, fluid: string): SumpStory => ({
  sump,
  fluid,
  lot: null,
  events: [],
  lastStrength: null,
  lastConcentration: null,
  lastLevel: null,
  dataAt: null,
  isSettled: false,
})

const isStrengthKnown = ({ events }: SumpStory) =>
  events.some((event) => event.kind === 'reading' && event.concentration !== null)

/** One entry's part in one sump's story; a transfer has two, and the sump it goes `into` sees it earlier. */
interface Step {
  entry: Entry
  rank: number
  into: string | null
}

function stepsOf(entries: readonly Entry[]): Step[] {
  const steps = entries.flatMap((entry): Step[] => {
    const step = { entry, rank: rankOf(entry.kind), into: null }
    const into = entry.kind === 'transfer' ? receiverOf(entry) : null
    return into === null ? [step] : [{ entry, rank: transferInRank, into }, step]
  })
  if (steps.length === entries.length) return steps
  return steps.toSorted(
    (a, b) => compare(utc(a.entry.at), utc(b.entry.at)) || a.rank - b.rank || compare(a.entry.id, b.entry.id),
  )
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)

function eventOf(entry: Entry, story: SumpStory, then: Things, meterCounts: Map<string, number>): SumpEvent | null {
  switch (entry.kind) {
    case 'charge':
      if (entry.fluid !== undefined) story.fluid = entry.fluid
      story.lot = entry.lot ?? null
      return {
        kind: 'charge',
        volume: entry.volume ?? null,
        strength: entry.strength ?? null,
        heldBack: entry.heldBack ?? 0,
      }
    case 'addition':
      return additionOf(entry, then, meterCounts)
    case 'drawoff':
    case 'transfer':
      return { kind: 'drawoff', volume: entry.volume ?? null }
    case 'reading':
      return readingOf(entry, story, then)
    default:
      return null
  }
}

function additionOf(entry: EntryOf<'addition'>, then: Things, meterCounts: Map<string, number>): SumpEvent | null {
  const { volume, strength = null, concentrate, meter, toMark, additive } = entry
  if (volume !== undefined) return { kind: 'addition', volume, strength, toMark: null }
  if (concentrate !== undefined) return { kind: 'addition', volume: concentrate, strength: 100, toMark: null }
  if (meter !== undefined) {
    const before = meterCounts.get(meter.id)
    meterCounts.set(meter.id, meter.count)
    const perCount = then.meter.get(meter.id)?.litresPerCount
    const metered = before === undefined || perCount === undefined ? null : (meter.count - before) * perCount
    return { kind: 'addition', volume: metered === null || metered < 0 ? null : metered, strength, toMark: null }
  }
  if (toMark === true) {
    return { kind: 'addition', volume: null, strength, toMark: then.sump.get(entry.sump)?.fillVolume ?? null }
  }
  return additive === undefined ? { kind: 'addition', volume: null, strength, toMark: null } : null
}

function readingOf(entry: Reading, story: SumpStory, then: Things): SumpEvent | null {
  const sump = then.sump.get(entry.sump)
  if (sump === undefined) return null
  const concentration = strengthOf(entry, then.fluid.get(story.fluid), then, story.lot)
  const volume = volumeOf(entry, sump)
  if (concentration !== null || figureOf(entry.brix) !== null) {
    story.lastStrength = entry
    story.lastConcentration = concentration?.mean ?? null
  }
  if (volume !== null) story.lastLevel = entry
  return concentration === null && volume === null ? null : { kind: 'reading', concentration, volume }
}

/** Percent by refractometer, without one by titration; null where the fluid's factor is unknown. */
export function strengthOf(entry: Reading, fluid: Fluid | undefined, then: Things, lot: string | null = null) {
  const brix = figureOf(entry.brix)
  const scale = fluid === undefined ? null : scaleOn(fluid, dayOf(utc(entry.at), then.shop.timeZone), lot)
  if (brix !== null && scale !== null) {
    const resolution = then.instrument.get(entry.instrument ?? '')?.resolution ?? usualResolution
    const read = concentrationFromBrix({ brix: brix.mean, ...scale, resolution })
    if (read.outcome === 'off-chart') return null
    if (read.concentration > 100) return impossible
    const spread = brix.mean > 0 ? (brix.sd * read.concentration) / brix.mean : brix.sd
    return { mean: read.concentration, sd: Math.hypot(read.sd, spread) }
  }
  const titration = figureOf(entry.titration)
  return titration === null
    ? null
    : { mean: titration.mean, sd: Math.hypot(titration.sd, titrationDoubt * titration.mean) }
}

/** All the fluid of the system: what was seen, and while the pumps run what is out in the lines. */
function volumeOf(entry: Reading, sump: Sump) {
  const seen = litresSeen(entry, sump) ?? figureOf(entry.volume)?.mean ?? null
  if (seen === null) return null
  const spread = figureOf(entry.volume)?.sd ?? 0
  const mean = seen + (entry.pumps === 'running' ? (sump.holdUp ?? 0) : 0)
  return { mean, sd: Math.hypot(spread, volumeDoubt * seen) }
}

/** A class as its middle with the spread of a uniform distribution; one without two ends says too little. */
function figureOf(value: Value | undefined): { mean: number; sd: number } | null {
  if (value === undefined) return null
  if (typeof value === 'number') return { mean: value, sd: 0 }
  if (!('low' in value)) return null
  return { mean: (value.low + value.high) / 2, sd: (value.high - value.low) / Math.sqrt(12) }
}

/** The sump that a transfer goes into; null where it goes into a container, or nobody said. */
export function receiverOf({ to }: EntryOf<'transfer'>): string | null {
  if (typeof to === 'string') return to
  return to !== undefined && 'sump' in to ? to.sump : null
}

/** What a transfer brings has the strength of the sump it comes from. */
function received(entry: Entry, stories: ReadonlyMap<string, SumpStory>): SumpEvent | null {
  if (entry.kind !== 'transfer') return null
  const source = standingAfter(stories.get(entry.sump)?.events ?? [])
  return { kind: 'transfer-in', volume: entry.volume ?? null, concentration: source.concentration?.mean ?? null }
}
