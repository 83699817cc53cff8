import {
  diagnose,
  type Figure,
  needsFollowUp,
  roundSigns,
  type SettledLimit,
  type SignId,
  type SymptomLimits,
  type SymptomReadings,
  type Symptoms,
  say,
  sayDiagnosis,
  sayList,
  sayRead,
  trueMarks,
  unitsHere,
  volumeBesideMark,
} from '@sumpbook/fluid'
import type { BookParts, TodayReader } from '../book-parts.ts'
import { readGuidedShop } from '../guidance/guided-shop.ts'
import { daysBetween } from '../journal/calendar.ts'
import { utc } from '../journal/order.ts'
import { readSumps } from '../today/read-sumps.ts'
import { strengthRead } from '../today/strength-read.ts'
import type { SumpNow } from '../today/today.ts'
import type { Observed, ReadWithAge, SumpDiagnosis } from './answer-types.ts'
import { observedSince } from './observed.ts'
import { toldSigns } from './told-signs.ts'
import { countsDays, type ReadOfCharge, readOfCharge } from './youngest-readings.ts'

export interface DiagnosisQuestion {
  sump: string
  at: Date
  reader?: TodayReader
}

/** Signs are weighed for a fortnight (common practice, no source); those to be followed up are shown for longer. */
const [signsDays, shownDays] = [14, 60]
/** A level this far from the mark is low, or high (common practice, as on the list of the day). */
const [lowLevel, highLevel] = [0.9, 1.05]
/** A refractometer and a titration farther apart in time than this say nothing of each other. */
const methodsDays = 3
const dayMs = 86_400_000
const clearOf = 100

/**
 * What may be behind the state of a sump: by the youngest readings of its charge, level and strength of the estimate, its limits, and the
 * signs of the last fortnight.
 *
 * @throws {BookError} `not-found` a sump the book does not have
 */
export async function readDiagnosis(parts: BookParts, question: DiagnosisQuestion): Promise<SumpDiagnosis> {
  const { sump: id, at, reader: asked = {} } = question
  const until = at.toISOString()
  const { items, things } = await readSumps(parts, { at, sump: id, reader: asked })
  const item = items[0]!
  const reader = { units: unitsHere(things.shop), ...asked }
  const [told, observed, { limits }] = await Promise.all([
    readOfCharge(parts.journal, id, until),
    observedSince(parts.journal, { since: new Date(at.getTime() - shownDays * dayMs).toISOString(), until, sump: id }),
    readGuidedShop(parts, { until: at, sump: id }),
  ])
  const chargedAt = told.charge === null ? null : utc(told.charge.at)
  const age = (from: string) => daysBetween(from, until, things.shop.timeZone)
  const read = told.youngest.map((one): ReadWithAge => {
    const days = age(one.at)
    return { ...one, days, stale: days > countsDays[one.field], text: sayRead(one.field, one.value, reader) }
  })
  const fluid = things.fluid.get(told.charge?.fluid ?? things.sump.get(id)!.fluid)
  const byBrix =
    told.brix === null ? null : (strengthRead(told.brix, fluid, things, told.charge?.lot ?? null)?.mean ?? null)
  const counted = observed.filter((one) => isOfNow(one, at, chargedAt))
  const seen = signsSeen(counted)
  const since = new Date(at.getTime() - signsDays * dayMs).toISOString()
  const toldBeside = await toldSigns(parts.journal, { sump: id, since, until, chargedAt })
  const held = limitsFor(item, limits.get(id) ?? [])
  // A temperature says nothing of itself.
  const weighed = read.filter(({ field }) => field !== 'temperature' || held.temperature !== undefined)
  const symptoms: Symptoms = {
    readings: readingsOf(recentOf(item, at, told), weighed, { told, byBrix }),
    limits: held,
    signs: [...new Set([...seen.signs, ...toldBeside.signs])],
    absent: [...seen.absent, ...toldBeside.absent],
    previous: Object.fromEntries(
      told.before
        .filter(({ entry, field }) => read.some((one) => one.field === field && one.entry !== entry && !one.stale))
        .map(({ field, value }) => [field, value]),
    ),
  }
  const notUnderstood = [...new Set(counted.flatMap((one) => one.notUnderstood))]
  const said = sayDiagnosis(diagnose(symptoms), reader, { notUnderstood })
  return {
    ...said,
    notes: [...said.notes, ...staleNotes(weighed)],
    sump: id,
    name: item.name,
    at: until,
    symptoms,
    read,
    observed: observed.toReversed(),
  }
}

/** A look that found all fine takes back what the round asks for, as far as it was seen before; of danger and complaints it takes back nothing. */
function signsSeen(counted: readonly Observed[]): { signs: SignId[]; absent: SignId[] } {
  const fine = counted.findLast(({ signs, notUnderstood }) => signs.length === 0 && notUnderstood.length === 0)
  const isTakenBack = (sign: SignId, at: string) =>
    fine !== undefined && at < fine.at && (roundSigns as readonly SignId[]).includes(sign) && !needsFollowUp(sign)
  const signs = [...new Set(counted.flatMap((one) => one.signs.filter((sign) => !isTakenBack(sign, one.at))))]
  return { signs, absent: fine === undefined ? [] : roundSigns.filter((sign) => !signs.includes(sign)) }
}

const isOfNow = ({ at: seen }: Observed, at: Date, charged: string | null) =>
  seen >= new Date(at.getTime() - signsDays * dayMs).toISOString() && seen >= (charged ?? '')

type Standing = Pick<SumpNow, 'concentration' | 'volume'>

/** The estimate goes on for ever; here it counts for as long after a reading, or the charge, as signs do. */
function recentOf(item: SumpNow, at: Date, { charge }: ReadOfCharge): Standing {
  const since = new Date(at.getTime() - signsDays * dayMs).toISOString()
  const isRecent = (when: string | undefined) => when !== undefined && utc(when) >= since
  const isCharged = charge?.volume !== undefined && isRecent(charge.at)
  return {
    concentration: isCharged || isRecent(item.lastStrength?.at) ? item.concentration : null,
    volume:
      item.volume !== null && (isCharged || isRecent(item.lastLevel?.at))
        ? volumeBesideMark(item.volume, item.mark)
        : null,
  }
}

/** What is known within an interval is a class: where it reaches over a limit, it says nothing of it. */
const asClass = ({ mean, low90, high90 }: Figure) => {
  const [low, high] = [Math.max(0, low90), Math.max(0, high90)]
  return high > low ? { low, high } : mean
}

function readingsOf(
  { concentration, volume }: Standing,
  read: readonly ReadWithAge[],
  { told, byBrix }: { told: ReadOfCharge; byBrix: number | null },
): SymptomReadings {
  const fresh = read.filter(({ stale, field }) => !stale && field !== 'titration')
  const titration = read.find(({ field, stale }) => field === 'titration' && !stale)
  const apart =
    titration === undefined || told.brix === null
      ? Number.POSITIVE_INFINITY
      : Math.abs(Date.parse(titration.at) - Date.parse(told.brix.at)) / dayMs
  const isPair = titration !== undefined && byBrix !== null && apart <= methodsDays
  return {
    ...Object.fromEntries(fresh.map(({ field, value }) => [field, value])),
    // Both methods side by side where they are of the same days; otherwise the estimate, which has weighed all of them.
    ...(isPair
      ? { concentration: byBrix, titration: titration.value }
      : concentration === null
        ? {}
        : { concentration: asClass(concentration) }),
    ...(volume === null ? {} : { volume: asClass(volume) }),
  }
}

/** Limits that hold for the sump, and its mark as limits of the level. */
function limitsFor({ bench, mark }: Pick<SumpNow, 'bench' | 'mark'>, settled: readonly SettledLimit[]): SymptomLimits {
  const { fillVolume } = trueMarks(bench, mark)
  const limits: Record<string, Record<string, number>> = {}
  const set = (quantity: string, end: string, value: number) => {
    limits[quantity] = { ...limits[quantity], [end]: value }
  }
  for (const { quantity, end, value } of settled) {
    if (quantity === 'waterNitrate' || quantity === 'level') continue
    if (end === 'low' || end === 'target' || end === 'high') set(quantity, end, value)
    if (end === 'poor') set(quantity, 'high', value)
    if (end === 'reasonable') set(quantity, 'clear', value)
  }
  // Slides go by decades: without classes of its own a count is clear two of them under its limit (HSE: 10⁴ and 10⁶).
  const germs = limits.bacteria
  if (germs?.high !== undefined) germs.clear ??= germs.high / clearOf
  if (bench.target !== null) set('concentration', 'target', bench.target)
  if (fillVolume !== null) limits.volume = { low: lowLevel * fillVolume, high: highLevel * fillVolume }
  return limits as SymptomLimits
}

function staleNotes(read: readonly ReadWithAge[]): string[] {
  const stale = read.filter((one) => one.stale)
  if (stale.length === 0) return []
  const words = stale.map(({ text, days }) =>
    say('{days, plural, one {{reading} of # day ago} other {{reading} of # days ago}}', { reading: text, days }),
  )
  return [say('Too old to count, read again: {readings}.', { readings: sayList(words) })]
}
