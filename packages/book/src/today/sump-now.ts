import {
  doubtsOf,
  expectedReading,
  mixAfter,
  mixNow,
  type Reader,
  type SumpEstimate,
  say,
  sayConcentration,
  sayCrossing,
  sayDrift,
  sayNextCheck,
  sayPercent,
  sayReasons,
  sayStanding,
  trueMarks,
  untouched,
  volumeBesideMark,
} from '@sumpbook/fluid'
import { benchFor, crossingFor, doubtAnswer, instantText } from '../estimate/estimate-document.ts'
import { scalesOn } from '../estimate/reading-events.ts'
import type { ShopStanding } from '../estimate/shop-standing.ts'
import { adviceBy } from '../estimate/sump-recipe.ts'
import { daysBetween } from '../journal/calendar.ts'
import { utc } from '../journal/order.ts'
import type { Reading } from '../schema/entries/index.ts'
import type { Sump } from '../schema/things/index.ts'
import { conditionOf, type Judged } from './condition.ts'
import type { LastReadings } from './last-readings.ts'
import { nextCheckOf, readEveryDays } from './next-check.ts'
import { sayReading } from './say-reading.ts'
import type { Ahead, Condition, LastReading, SumpItem } from './today.ts'

/** Who reads it, and when. */
export interface AskedBy {
  /** The time of asking, RFC 3339. */
  at: string
  reader: Reader
}

/** One sump as the estimate has it, with its recipe and its sentences. */
export function sumpNow(standing: ShopStanding, sump: Sump, read: LastReadings, { at, reader }: AskedBy): SumpItem {
  const { shop, clock, ms, things, memory } = standing
  const asked = untouched(shop, sump.id, clock.at(ms))
  const { dataAt } = asked.sump
  const now = mixNow(asked)
  const doubts = doubtsOf(asked)
  const bench = benchFor(standing, sump)
  const charge = memory.sumps.get(sump.id)?.charge ?? null
  const fluid = charge?.fluid ?? sump.fluid
  const isOil = bench.class === 'straight-oil'
  const isTold = dataAt !== null
  const isStrengthTold = !isOil && tellsStrength(read)
  const concentration = isStrengthTold ? now.concentration : null
  const advice = adviceBy(tellsOf({ now, doubts }, { concentration, isTold }), bench, reader)
  const knownAt = [read.strength, read.charge].flatMap((entry) => (entry === null ? [] : [Date.parse(entry.at)]))
  const readAt = knownAt.length === 0 ? null : Math.max(...knownAt)
  const nextCheck = isOil ? null : nextCheckOf(standing, asked, { band: bench.band, readAt })
  const dueAt = nextCheck === null ? Number.POSITIVE_INFINITY : Date.parse(nextCheck.at)
  const refractometer = { scales: scalesOn(Math.floor(clock.at(ms)), things, charge), resolution: bench.resolution }
  const item: Judged = {
    ...advice,
    action: advice.recipe.action,
    sump: sump.id,
    name: sump.name,
    place: sump.place ?? null,
    order: sump.order ?? null,
    fluid: { id: fluid, name: things.fluid.get(fluid)?.name ?? fluid, class: bench.class ?? null },
    asOf: instantText(ms),
    bench,
    concentration,
    volume: isTold ? now.volume : null,
    mark: isTold ? now.markVolume : null,
    expected: isStrengthTold ? expectedReading(asked, refractometer) : null,
    inAWeek: isStrengthTold ? mixAfter(asked, 7) : null,
    crossing: isStrengthTold ? crossingFor(standing, asked, { sump, bench, mark: now.markVolume }) : null,
    nextCheck,
    doubts: doubts.filter(({ open }) => open).map((doubt) => doubtAnswer(doubt, clock, reader)),
    lastStrength: lastOf(read.strength, 'strength', read.concentration, reader),
    lastLevel: lastOf(read.level, 'level', null, reader),
    dataAt: dataAt === null ? null : instantText(clock.instantOf(dataAt)),
  }
  const condition = conditionOf(item, dueAt <= Date.parse(at))
  const dayReader = { ...reader, timeZone: things.shop.timeZone, now: at }
  const ahead = aheadOf(item, dayReader)
  return {
    ...item,
    words: condition === 'unread' ? { ...item.words, headline: say('Read it'), how: '', outcome: '' } : item.words,
    condition,
    sentence: standingWords(item, reader),
    ahead,
    why: whyOf(item, condition, { ...ahead, everyDays: readEveryDays(things) }, dayReader),
  }
}

/** Whether any record tells of its strength. */
export const tellsStrength = ({ concentration, charge }: LastReadings) =>
  concentration !== null || charge?.strength !== undefined

/** What the records tell: of a sump that none tells of, neither level nor strength is known. */
export const tellsOf = (
  { now, doubts }: { now: Pick<SumpEstimate['now'], 'volume' | 'markVolume'>; doubts: SumpEstimate['doubts'] },
  { concentration, isTold }: { concentration: SumpEstimate['now']['concentration'] | null; isTold: boolean },
) => ({
  now: {
    concentration,
    markVolume: now.markVolume,
    volume: isTold ? now.volume : { ...now.volume, sd: Number.POSITIVE_INFINITY },
  },
  doubts,
})

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

function standingWords({ concentration, volume, bench, mark }: Judged, reader: Reader): string {
  if (bench.class === 'straight-oil') return say('A straight oil: no water, no mix.')
  const beside = volume === null ? null : volumeBesideMark(volume, mark)
  return sayStanding({ concentration, volume: beside, mark: trueMarks(bench, mark).fillVolume }, reader)
}

type DayReader = Reader & { timeZone: string; now: string }

/** Where it goes if nothing is done, and when it is read next; while a record is in doubt nothing is said of it. */
function aheadOf(item: Judged, reader: DayReader): Ahead {
  const { concentration, inAWeek, crossing, asOf, doubts } = item
  if (doubts.length > 0) return { drift: '', crossing: '', check: '' }
  const isKnown = concentration !== null && inAWeek !== null
  return {
    drift: isKnown ? sayDrift(concentration.mean, inAWeek.concentration.mean, reader) : '',
    crossing: isKnown && crossing !== null ? sayCrossing(crossing, { ...reader, now: asOf }) : '',
    check: checkWords(item, reader),
  }
}

/** That it may have left its band says nothing new of a sump that is outside of it already. */
function checkWords({ nextCheck, concentration, bench: { band } }: Judged, reader: DayReader): string {
  if (nextCheck === null) return ''
  const isIn =
    concentration !== null && band !== null && concentration.mean >= band.low && concentration.mean <= band.high
  const because = nextCheck.because === 'band' && !isIn ? 'rule' : nextCheck.because
  return sayNextCheck({ ...nextCheck, because }, reader)
}

function whyOf(
  item: Judged,
  condition: Condition,
  { drift, crossing, check, everyDays }: Ahead & { everyDays: number },
  reader: DayReader,
): string {
  const { concentration, bench, lastStrength, doubts } = item
  const reasons = sayReasons(item.recipe.because.filter((reason) => isWorthSaying(reason, item)))
  if (doubts.length > 0) return joined([...doubts.map(({ text }) => text), ...reasons])
  const parts: string[] = []
  if (concentration !== null && bench.band !== null) {
    const figures = {
      concentration: sayConcentration(concentration, reader),
      low: sayPercent(bench.band.low, reader),
      high: sayPercent(bench.band.high, reader),
    }
    if (condition === 'lean') parts.push(say('Now {concentration}, under its band of {low} to {high}.', figures))
    else if (condition === 'rich') parts.push(say('Now {concentration}, above its band of {low} to {high}.', figures))
    else parts.push(say('Now {concentration}; its band is {low} to {high}.', figures))
  }
  parts.push(...reasons)
  if (condition !== 'measure-first') parts.push(drift)
  // Of a level that is there already nothing need be said again.
  if (condition !== 'measure-first' && condition !== 'below-suction') parts.push(crossing)
  if (condition === 'unread') parts.push(check)
  if (lastStrength !== null) {
    const age = daysBetween(lastStrength.at, reader.now, reader.timeZone)
    if (age > everyDays)
      parts.push(
        say(
          '{days, plural, one {The last reading is # day old: read it again before pouring.} other {The last reading is # days old: read it again before pouring.}}',
          { days: age },
        ),
      )
  }
  return joined(parts)
}

/** A level this far above the mark is said: less is no more than the estimate's own doubt (common practice). */
const clearlyAbove = 1.05

/** Lean and rich are said with the figures. */
function isWorthSaying(reason: SumpItem['recipe']['because'][number], { volume, bench, mark }: Judged): boolean {
  if (reason === 'lean' || reason === 'rich') return false
  const { fillVolume } = trueMarks(bench, mark)
  return reason !== 'above-mark' || volume === null || fillVolume === null || volume.mean > clearlyAbove * fillVolume
}

const joined = (sentences: readonly string[]) => sentences.filter((sentence) => sentence !== '').join(' ')
