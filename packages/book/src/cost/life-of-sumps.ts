import {
  type Cents,
  type CostGrowth,
  conditionFirst,
  costGrowth,
  economicLife,
  type KeptFor,
  type MoneyReader,
  message,
  type SaidLife,
  say,
  sayDate,
  sayFinding,
  sayLife,
  upperFirst,
} from '@sumpbook/fluid'
import type { BookParts, TodayReader } from '../book-parts.ts'
import { amountOf } from '../estimate/amounts.ts'
import { dayText } from '../estimate/shop-clock.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { Sump } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'
import type { Lives, SumpLife } from './answer-types.ts'
import { type CostLine, costLinesOf } from './cost-lines.ts'
import { concentratePrice, costsAt, wastePrice, waterPrice } from './prices.ts'
import { type Recorded, readRecords, type SpanRecords } from './records.ts'
import { aimOf } from './strengths.ts'

export interface LifeQuestion {
  at: Date
  reader?: TodayReader
}

/** Charges are looked back at for a year. */
const yearDays = 365
/** Days over which the cost of keeping is taken together. */
const periodDays = 28
/** A cleanout within so many days of a charge belongs to it. */
const nearDays = 3

const lifeRules = [
  message(
    'What keeping a charge costs is taken together over four weeks at a time since it was filled: concentrate, water, additives and rounds. Cleanouts and the fill itself are the change.',
  ),
  message('A straight line of cost by age; where its 90 % interval does not lie above 0, no age is named.'),
  message(
    'A split, septic or complained-of charge goes now: no age is named for it. Money makes no interval of guidance, law or supplier longer.',
  ),
] as const

/** Reads the year up to now: what each charge cost to keep, what its change costs, what was seen of it. */
export async function readLives(parts: BookParts, { at, reader = {} }: LifeQuestion): Promise<Lives> {
  const things = (await parts.things()).at(at.toISOString())
  const until = at.getTime()
  const clockDay = (ms: number) => new Date(ms).toISOString().slice(0, 10)
  const records = await readRecords(parts, {
    from: clockDay(until - yearDays * 86_400_000),
    to: clockDay(until + 86_400_000),
  })
  const entries = records.entries.filter(({ ms }) => ms <= until)
  const { lines } = costLinesOf({ ...records, entries })
  const { currency } = things.shop
  const today = records.clock.at(until)
  const mixed = [...things.sump.values()].filter(({ fluid }) => things.fluid.get(fluid)?.class !== 'straight-oil')
  return {
    at: at.toISOString(),
    currency,
    sumps: mixed.map((sump) => lifeOf(sump, { records, entries, lines, things, today, said: { ...reader, currency } })),
    rules: lifeRules.map((rule) => say(rule)),
  }
}

interface Context {
  records: SpanRecords
  entries: readonly Recorded[]
  lines: readonly CostLine[]
  things: Things
  /** In days of the shop. */
  today: number
  said: MoneyReader
}

function lifeOf(sump: Sump, { records, entries, lines, things, today, said }: Context): SumpLife {
  const own = entries.filter(({ entry }) => entry.sump === sump.id)
  const charged = own.findLast(({ entry }) => entry.kind === 'charge')?.day ?? null
  const since = own.filter(({ day }) => charged === null || day >= charged)
  const mine = lines.filter((line) => line.sump === sump.id)
  const growth: CostGrowth =
    charged === null ? { outcome: 'too-few', periods: 0 } : costGrowth(keptFor(mine, charged, today))
  const changeCost =
    charged === null
      ? reckoned(sump, things, records)
      : (asWritten(mine, own, charged, things) ?? reckoned(sump, things, records))
  const condition = conditionOf(since, sump, things)
  const age = charged === null ? null : Math.floor(today) - Math.floor(charged)
  const life =
    condition === null && growth.outcome === 'grows' && changeCost !== null && changeCost.cents > 0
      ? lifeBy(growth, changeCost.cents)
      : null
  const words = saidOf({ condition, growth, changeCost, life, age })
  return {
    sump: sump.id,
    name: sump.name,
    chargedOn: charged === null ? null : dayText(Math.floor(charged)),
    age,
    growth,
    changeCost,
    life,
    condition,
    sentence: sayLife(words, said),
  }
}

/** Whole periods of keeping since a charge, the last one left out where it has only begun. */
function keptFor(lines: readonly CostLine[], charged: number, today: number): KeptFor[] {
  const periods = Math.floor((today - charged) / periodDays)
  const sums = new Array<number>(periods).fill(0)
  for (const { part, day, cost, isCharge } of lines) {
    const n = Math.floor((day - charged) / periodDays)
    if (isCharge || part === 'cleanouts' || n < 0 || n >= periods) continue
    sums[n]! += cost
  }
  return sums.map((cost, n) => ({ age: (n + 0.5) * periodDays, costPerDay: cost / 1e8 / periodDays }))
}

/** What the last change cost by what was written; null where it has no cleanout with a cost. */
function asWritten(lines: readonly CostLine[], own: readonly Recorded[], charged: number, things: Things) {
  const isNear = (day: number) => Math.abs(day - charged) <= nearDays
  const cleaned = lines.filter(({ part, day }) => part === 'cleanouts' && isNear(day))
  if (cleaned.length === 0) return null
  const filled = lines.filter(({ isCharge, day }) => isCharge && isNear(day))
  const waste = own.flatMap(({ entry, day }) =>
    entry.kind === 'cleanout' && isNear(day) ? [amountOf(entry.wasteVolume) ?? 0] : [],
  )
  const { perLitre } = wastePrice(null, costsAt(things))
  const money = [...cleaned, ...filled].reduce((sum, { cost }) => sum + cost, 0) / 1e6
  return {
    cents: Math.round(money + 100 * (perLitre ?? 0) * waste.reduce((sum, litres) => sum + litres, 0)),
    assumed: false,
  }
}

/** A full charge at its target, and its litres as waste where waste has a price. */
function reckoned(sump: Sump, things: Things, { lots }: SpanRecords) {
  const { target } = aimOf(sump, things)
  const price = concentratePrice({ fluid: sump.fluid, lot: null }, things, lots)
  if (target === null || price === null || sump.fillVolume === undefined) return null
  const water = [...things.water.keys()].map((id) => waterPrice(id, things)).find((one) => one !== null) ?? 0
  const { perLitre } = wastePrice(null, costsAt(things))
  const litre = (target / 100) * price + (1 - target / 100) * water + (perLitre ?? 0)
  return { cents: Math.round(100 * sump.fillVolume * litre), assumed: true }
}

function lifeBy(growth: Extract<CostGrowth, { growth: number }>, cents: Cents): SumpLife['life'] {
  const of = (rate: number) => economicLife({ changeCost: cents / 100, running: { start: growth.start, growth: rate } })
  const found = of(growth.growth)
  if (found.outcome === 'never') return null
  return {
    days: found.days,
    low: of(growth.high90).days ?? found.days,
    high: of(growth.low90).days ?? found.days,
    centsPerDay: Math.round(100 * found.costPerDay),
  }
}

function saidOf({
  condition,
  growth,
  changeCost,
  life,
  age,
}: Pick<SumpLife, 'condition' | 'growth' | 'changeCost' | 'life' | 'age'>): SaidLife {
  if (condition !== null) return { outcome: 'condition', because: condition }
  if (growth.outcome === 'too-few') return { outcome: 'too-few' }
  if (growth.outcome === 'flat') return { outcome: 'flat' }
  if (changeCost === null || life === null || age === null) return { outcome: 'no-change-cost' }
  const { days, low, high } = life
  return { outcome: 'age', age, days, low, high, changeCost: changeCost.cents, assumed: changeCost.assumed }
}

/** What was seen and counted of the charge, as a sentence; null where nothing of it decides. */
function conditionOf(since: readonly Recorded[], sump: Sump, things: Things): string | null {
  const bacteriaHigh = sump.limits?.bacteria?.high ?? things.fluid.get(sump.fluid)?.limits?.bacteria?.high ?? null
  const seen = since.flatMap((recorded) =>
    recorded.entry.kind === 'observation' ? [{ recorded, signs: recorded.entry.signs ?? [] }] : [],
  )
  const sight = seen.findLast(({ signs }) => conditionFirst({ signs, bacteria: null, bacteriaHigh }) !== null)
  if (sight !== undefined) {
    const sign = conditionFirst({ signs: sight.signs, bacteria: null, bacteriaHigh })!
    return say('{sign} was seen on {day} and no change is written since.', {
      sign: upperFirst(sayFinding(sign)),
      day: sayDate(dayText(Math.floor(sight.recorded.day))),
    })
  }
  const slide = since.findLast(({ entry }) => entry.kind === 'reading' && entry.bacteria !== undefined)
  if (slide === undefined) return null
  const bacteria = atLeast((slide.entry as EntryOf<'reading'>).bacteria)
  if (conditionFirst({ signs: [], bacteria, bacteriaHigh }) === null) return null
  return say(
    '{count, plural, one {The last slide, of {day}, has # germ/mL or more, its limit or above.} other {The last slide, of {day}, has # germs/mL or more, its limit or above.}}',
    { day: sayDate(dayText(Math.floor(slide.day))), count: bacteria! },
  )
}

/** The least that a count says. */
function atLeast(value: EntryOf<'reading'>['bacteria']): number | null {
  if (value === undefined || typeof value === 'number') return value ?? null
  return 'low' in value ? value.low : 'atLeast' in value ? value.atLeast : null
}
