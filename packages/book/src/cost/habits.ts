import {
  concentrateAboveTarget,
  concentrateToHold,
  estimateSump,
  holdingStrength,
  type MoneyReader,
  message,
  type Reader,
  type SaidLitres,
  say,
  sayLean,
  sayRich,
  saySaving,
  strengthDays,
  unitsHere,
} from '@sumpbook/fluid'
import type { BookParts, TodayReader } from '../book-parts.ts'
import type { ShopStanding } from '../estimate/shop-standing.ts'
import { mapInTurns } from '../in-turns.ts'
import type { Sump } from '../schema/things/index.ts'
import type { DaySpan, Habits, SumpHabit } from './answer-types.ts'
import { sum } from './litres.ts'
import { type PourLine, poursOf } from './pours.ts'
import { concentratePrice, costsAt } from './prices.ts'
import { readRecords, type SpanRecords } from './records.ts'
import { aimOf, bandDays, type StrengthRead, strengthsOf } from './strengths.ts'

export interface HabitQuestion extends DaySpan {
  at: Date
  reader?: TodayReader
}

/** Central 90 %. */
const quantile95 = 1.6448536269514722

/**
 * What running rich and lean cost in a span, and what topping up at the strength that holds the target would have taken. Strengths are those that were
 * read; what was carried off is the estimate's, at the end of the span.
 */
export async function readHabits(parts: BookParts, { from, to, at, reader = {} }: HabitQuestion): Promise<Habits> {
  const records = await readRecords(parts, { from, to })
  const { span, things } = records
  const end = Math.min(at.getTime(), span.before - 1)
  const { standing, sumps } = await parts.checkpoints.standing(end)
  const days = Math.min(span.days, Math.max(0, Math.floor(records.clock.at(end)) - span.firstDay + 1))
  const { currency } = things.shop
  const said = { units: unitsHere(things.shop), ...reader, currency }
  const all = { strengths: strengthsOf(records), pours: poursOf(records) }
  const found = await mapInTurns(sumps, (sump) => habitOf(sump, { records, standing, days, said, ...all }))
  const habits = found.filter((habit) => habit !== null)
  const total = totalsOf(habits)
  return {
    from,
    to,
    currency,
    days,
    ...total,
    sumps: habits,
    rules: habitRules.map((rule) => say(rule)),
    sentences: sentencesOf(total, said),
  }
}

const habitRules = [
  message(
    'Strengths are those that were read, joined by straight lines, each good for a week; what was poured between does not show.',
  ),
  message(
    'What is carried off is the estimate’s mean over the four weeks before the end of the time asked for. Low and high take the ends of both together: wider than 90 %.',
  ),
  message(
    'A sump is taken to be full to its mark at both ends of the time; what it began with above its target is not claimed as a saving. Concentrate has the price of the end of the time.',
  ),
] as const

interface Context {
  records: SpanRecords
  standing: ShopStanding
  days: number
  strengths: ReadonlyMap<string, StrengthRead[]>
  pours: readonly PourLine[]
  said: Reader & MoneyReader
}

function habitOf(sump: Sump, context: Context): SumpHabit | null {
  const { records, standing, days, said } = context
  const { target, band } = aimOf(sump, standing.things)
  if (target === null || days === 0) return null
  const { now, doubts } = estimateSump(standing.shop, sump.id, standing.clock.at(standing.ms), [])
  const wrong = new Set(
    doubts.flatMap(({ kind, entry }) => (kind === 'misread' || kind === 'wrong-sump' ? [entry] : [])),
  )
  const read = (context.strengths.get(sump.id) ?? []).filter(({ entry }) => !wrong.has(entry))
  const span = { from: records.span.firstDay, days }
  const strengths = strengthDays(read, span)
  const inBand = bandDays(read, band, { firstDay: span.from, days })
  const then = records.history.at(new Date(standing.ms).toISOString())
  const price = concentratePrice({ fluid: sump.fluid, lot: null }, then, records.lots)
  const doubt = quantile95 * Math.sqrt(mean(read.map(({ sd }) => sd ** 2)))
  const rich = between((side) =>
    concentrateAboveTarget({
      strengths: strengths.map((strength) =>
        strength === null ? null : Math.min(100, Math.max(0, strength + side * doubt)),
      ),
      target,
      carryOff: Math.max(0, at(now.carryOff, side)),
    }),
  )
  const own = context.pours.filter((pour) => pour.sump === sump.id)
  const saving = savingOf({ own, strengths, doubt, target, days, sump, records, carryOff: now.carryOff })
  const lean = leanOf(inBand.under, costsAt(then).leanPerDay)
  const { carryOff, evaporation } = now
  const habit = {
    sump: sump.id,
    name: sump.name,
    target,
    days: inBand,
    losses: { evaporation: over(evaporation, days), carryOff: over(carryOff, days) },
    topUpToHold:
      carryOff.mean > 0 ? holdingStrength({ target, evaporation: evaporation.mean, carryOff: carryOff.mean }) : null,
    pouredStrength: meanStrength(own),
    rich: { litres: rich, cents: inMoney(rich, price) },
    saving: saving === null ? null : { ...saving, cents: inMoney(saving.saved, price) },
    lean,
  }
  return { ...habit, sentences: sumpSentences(habit, said) }
}

const sumpSentences = ({ rich, saving, lean }: Omit<SumpHabit, 'sentences'>, said: Reader & MoneyReader) =>
  [
    sayRich(rich.litres, rich.cents, said),
    saving === null ? '' : saySaving(saving, said),
    sayLean(lean.days, lean.cents, said),
  ].filter((sentence) => sentence !== '')

interface SavingParts {
  own: readonly PourLine[]
  strengths: readonly (number | null)[]
  doubt: number
  target: number
  days: number
  sump: Sump
  records: SpanRecords
  carryOff: { mean: number; low90: number; high90: number }
}

function savingOf({ own, strengths, doubt, target, days, sump, records, carryOff }: SavingParts) {
  const began = strengths.find((strength) => strength !== null)
  const volume = sump.fillVolume
  const isKnown = own.every(({ kind, concentrate }) => kind === 'addition' && concentrate !== null)
  if (began === undefined || began === null || volume === undefined || !isKnown || own.length === 0) return null
  const drawnOff = sum(
    records.entries.flatMap(({ entry }) =>
      entry.sump === sump.id && (entry.kind === 'drawoff' || entry.kind === 'transfer') ? [entry.volume ?? 0] : [],
    ),
  )
  const poured = sum(own.map(({ concentrate }) => concentrate!))
  // Much carried off asks for more; so does a sump that began leaner than it was read. What it began with above its target is not
  // claimed as a saving: it is still there, and leaves once.
  const need = between((side) =>
    concentrateToHold({
      start: { volume, concentration: Math.min(target, Math.max(0, began - side * doubt)) },
      endVolume: volume,
      target,
      carryOff: Math.max(0, at(carryOff, side)),
      days,
      drawnOff,
    }),
  )
  const saved = { mean: poured - need.mean, low: poured - need.high, high: poured - need.low }
  return { poured, need, saved }
}

type Side = -1 | 0 | 1
const at = ({ mean, low90, high90 }: { mean: number; low90: number; high90: number }, side: Side) =>
  side < 0 ? low90 : side > 0 ? high90 : mean
const between = (figure: (side: Side) => number): SaidLitres => ({ mean: figure(0), low: figure(-1), high: figure(1) })
const over = ({ mean, low90, high90 }: { mean: number; low90: number; high90: number }, days: number): SaidLitres => ({
  mean: mean * days,
  low: Math.max(0, low90) * days,
  high: high90 * days,
})
const mean = (values: readonly number[]) =>
  values.length === 0 ? 0 : values.reduce((total, value) => total + value, 0) / values.length

function meanStrength(own: readonly PourLine[]): number | null {
  const tops = own.filter(({ kind, concentrate }) => kind === 'addition' && concentrate !== null)
  const litres = sum(tops.map(({ mix }) => mix!))
  return litres === 0 ? null : (100 * sum(tops.map(({ concentrate }) => concentrate!))) / litres
}

const inMoney = ({ mean: of, low, high }: SaidLitres, price: number | null): SaidLitres | null => {
  if (price === null) return null
  const cents = (litres: number) => Math.round(100 * litres * price)
  return { mean: cents(of), low: cents(low), high: cents(high) }
}

const leanOf = (days: number, perDay: number | undefined) => ({
  days,
  cents: perDay === undefined ? null : Math.round(100 * days * perDay),
})

function totalsOf(habits: readonly SumpHabit[]): Pick<Habits, 'rich' | 'saved' | 'lean'> {
  const add = (all: readonly SaidLitres[]): SaidLitres => ({
    mean: sum(all.map((one) => one.mean)),
    low: sum(all.map(({ low }) => low)),
    high: sum(all.map(({ high }) => high)),
  })
  const money = (all: readonly (SaidLitres | null)[]) => {
    const known = all.filter((one) => one !== null)
    return known.length === 0 ? null : add(known)
  }
  const savings = habits.flatMap(({ saving }) => (saving === null ? [] : [saving]))
  const leanCents = habits.flatMap(({ lean }) => (lean.cents === null ? [] : [lean.cents]))
  return {
    rich: { litres: add(habits.map(({ rich }) => rich.litres)), cents: money(habits.map(({ rich }) => rich.cents)) },
    saved:
      savings.length === 0
        ? null
        : { litres: add(savings.map(({ saved }) => saved)), cents: money(savings.map(({ cents }) => cents)) },
    lean: {
      days: sum(habits.map(({ lean }) => lean.days)),
      cents: leanCents.length === 0 ? null : sum(leanCents),
    },
  }
}

function sentencesOf({ rich, lean }: Pick<Habits, 'rich' | 'lean'>, said: Reader & MoneyReader): string[] {
  return [sayRich(rich.litres, rich.cents, said), sayLean(lean.days, lean.cents, said)].filter(
    (sentence) => sentence !== '',
  )
}
