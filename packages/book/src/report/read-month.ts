import { type Reader, say, sayMonth, sayVolume, unitsHere } from '@sumpbook/fluid'
import type { BookParts, TodayReader } from '../book-parts.ts'
import type { Cost } from '../cost/answer-types.ts'
import { sum } from '../cost/litres.ts'
import { readMachineHours } from '../cost/machine-hours.ts'
import { costOf } from '../cost/read-cost.ts'
import { type Recorded, readRecords, type SpanRecords } from '../cost/records.ts'
import { daysOfMonth } from '../cost/span.ts'
import { aimOf, bandDays, type StrengthRead, strengthsOf } from '../cost/strengths.ts'
import { sayEntry } from '../journal/say-entry.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { Things } from '../setup/things.ts'
import { readEveryDays } from '../today/next-check.ts'
import type { Correction, MonthReport, PickupLine, StockLine, SumpMonth, WasteLine } from './answer-types.ts'

export interface MonthQuestion {
  /** `2026-10`. */
  month: string
  /** Now: of a month that is not over, only its days so far are due. */
  at: Date
  reader?: TodayReader
}

/**
 * The report of one month of the shop's calendar, from the entries that stand up to one head of the chain. A month is read by itself: a book of ten
 * years answers it as fast as a book of one.
 */
export async function readMonth(parts: BookParts, { month, at, reader = {} }: MonthQuestion): Promise<MonthReport> {
  const days = daysOfMonth(month)
  const records = await readRecords(parts, days)
  const cost = costOf(records, await readMachineHours(parts.journal, records), { ...days, reader })
  const { things, entries, span, head } = records
  const { name, timeZone, units, currency } = things.shop
  const until = Math.min(at.getTime(), span.before)
  const daysSoFar = Math.max(0, Math.ceil(records.clock.at(until) - span.firstDay - 1e-9))
  const passed = { firstDay: span.firstDay, days: Math.min(span.days, daysSoFar) }
  const said: Reader = { units: unitsHere(things.shop), ...reader }
  const report = {
    month,
    ...days,
    madeAt: at.toISOString(),
    isOver: at.getTime() >= span.before,
    shop: { name, timeZone, units, currency },
    head,
    entries: entries.length,
    cost,
    sumps: sumpMonths(records, cost, passed),
    cleanouts: of(entries, 'cleanout').map(({ recorded, entry }) => ({
      ...lineOf(recorded),
      sump: entry.sump,
      cleaner: entry.cleaner ?? null,
      hours: entry.hours ?? null,
      wasteLitres: entry.wasteVolume ?? null,
    })),
    waste: { stored: storedLines(entries, things), pickups: pickupLines(records) },
    stock: stockLines(records, cost),
    verdicts: of(entries, 'verdict').map(({ recorded, entry }) => ({
      ...lineOf(recorded),
      sump: entry.sump ?? null,
      answer: entry.answer ?? '',
    })),
    people: [...Map.groupBy(entries, ({ by }) => by)]
      .map(([id, own]) => ({ id, entries: own.length }))
      .sort((a, b) => b.entries - a.entries || String(a.id).localeCompare(String(b.id))),
    corrections: await correctionsOf(parts, records, said),
  }
  return { ...report, sentences: sentencesOf(report, said) }
}

interface Of<K extends Recorded['entry']['kind']> {
  recorded: Recorded
  entry: EntryOf<K>
}

const of = <K extends Recorded['entry']['kind']>(entries: readonly Recorded[], kind: K): Of<K>[] =>
  entries.flatMap((recorded) =>
    recorded.entry.kind === kind ? [{ recorded, entry: recorded.entry as EntryOf<K> }] : [],
  )

const lineOf = ({ id, at, by }: Recorded) => ({ entry: id, at, by })

function sumpMonths(records: SpanRecords, cost: Cost, passed: { firstDay: number; days: number }): SumpMonth[] {
  const { things, entries } = records
  const strengths = strengthsOf(records)
  const bySump = Map.groupBy(entries, ({ entry }) => entry.sump ?? null)
  return cost.sumps.flatMap(({ sump: id, name, cents, litres, wasteLitres }) => {
    const sump = id === null ? undefined : things.sump.get(id)
    if (sump === undefined) return []
    const own = bySump.get(sump.id) ?? []
    const read = strengths.get(sump.id) ?? []
    const { band } = aimOf(sump, things)
    const isMixed = things.fluid.get(sump.fluid)?.class !== 'straight-oil'
    return [
      {
        sump: sump.id,
        name,
        fluid: things.fluid.get(sump.fluid)?.name ?? sump.fluid,
        cents,
        litres,
        out: outOf(sump.id, own, entries),
        readings: {
          strength: read.filter(({ at }) => at >= passed.firstDay).length,
          all: of(own, 'reading').length,
          due: isMixed ? Math.floor(passed.days / readEveryDays(things)) : 0,
          longestGapDays: isMixed ? longestGap(read, passed) : null,
        },
        days: isMixed ? bandDays(read, band, passed) : null,
        verdicts: of(own, 'verdict').length,
        cleanouts: of(own, 'cleanout').length,
        wasteLitres,
      },
    ]
  })
}

function outOf(sump: string, own: readonly Recorded[], entries: readonly Recorded[]): SumpMonth['out'] {
  const transfers = of(entries, 'transfer')
  const into = transfers.filter(
    ({ entry: { to } }) => to === sump || (typeof to === 'object' && 'sump' in to && to.sump === sump),
  )
  return {
    drawnOff: sum(of(own, 'drawoff').map(({ entry }) => entry.volume ?? 0)),
    skimmed: sum(of(own, 'skim').map(({ entry }) => entry.litres ?? 0)),
    movedOut: sum(of(own, 'transfer').map(({ entry }) => entry.volume ?? 0)),
    movedIn: sum(into.map(({ entry }) => entry.volume ?? 0)),
  }
}

/** Whole days between one reading of the strength and the next, the month's ends included; null without any reading. */
function longestGap(
  read: readonly StrengthRead[],
  { firstDay, days }: { firstDay: number; days: number },
): number | null {
  if (read.length === 0) return null
  const stops = [...read.map(({ at }) => Math.floor(at)), firstDay + days - 1]
  return Math.max(0, ...stops.slice(1).map((day, i) => day - Math.max(stops[i]!, firstDay)))
}

function storedLines(entries: readonly Recorded[], things: Things): WasteLine[] {
  return of(entries, 'stored').map(({ recorded, entry }) => ({ ...lineOf(recorded), ...wasteOf(entry, things) }))
}

/** The number of a carrier's document may come later, in an entry that answers the pickup. */
function pickupLines({ entries, things }: SpanRecords): PickupLine[] {
  const later = new Map(
    of(entries, 'check').flatMap(({ entry: { answers, document } }) =>
      answers === undefined || document === undefined ? [] : [[answers.toLowerCase(), document] as const],
    ),
  )
  return of(entries, 'pickup').map(({ recorded, entry }) => ({
    ...lineOf(recorded),
    ...wasteOf(entry, things),
    code: entry.code ?? things.waste.get(entry.about.id ?? '')?.code ?? null,
    document: entry.document ?? later.get(recorded.id) ?? null,
  }))
}

const wasteOf = ({ stream, about, litres, kilograms }: EntryOf<'stored'> | EntryOf<'pickup'>, things: Things) => ({
  stream: stream ?? things.waste.get(about.id ?? '')?.stream ?? '',
  litres: litres ?? null,
  kilograms: kilograms ?? null,
})

function stockLines({ entries, things }: SpanRecords, cost: Cost): StockLine[] {
  const litres = (kind: 'receipt' | 'issue', fluid: string) =>
    sum(
      of(entries, kind)
        .filter(({ entry }) => (entry.fluid ?? entry.about.id) === fluid)
        .map(({ entry }) => entry.litres ?? 0),
    )
  return [...things.fluid.values()]
    .map(({ id, name }) => ({
      fluid: id,
      name,
      received: litres('receipt', id),
      issued: litres('issue', id),
      poured: cost.fluids.find((one) => one.id === id)?.litres ?? 0,
    }))
    .filter(({ received, issued, poured }) => received + issued + poured > 0)
}

async function correctionsOf(
  { journal }: BookParts,
  { withdrawn, voids, things }: SpanRecords,
  reader: Reader,
): Promise<Correction[]> {
  const here = withdrawn.map(({ id, entry, at, by, void: { at: on, by: who, reason } }) => ({
    entry: id,
    at,
    sump: typeof entry.sump === 'string' ? entry.sump : null,
    text: sayEntry(entry, things, reader) ?? entry.kind,
    by,
    withdrawn: { at: on, by: who, reason },
  }))
  // Withdrawals of the month that reach into other months.
  const known = new Set(withdrawn.map(({ id }) => id))
  const others = voids.filter(({ target }) => !known.has(target))
  const bodies = await journal.stored(others.map(({ target }) => target))
  const elsewhere = others.flatMap(({ target, at, by, reason }) => {
    const stored = bodies.get(target)
    if (stored === undefined) return []
    const entry = JSON.parse(stored.body) as Recorded['entry']
    const text = sayEntry(entry, things, reader) ?? stored.kind
    return [
      { entry: target, at: stored.at, sump: stored.sump, text, by: entry.by ?? null, withdrawn: { at, by, reason } },
    ]
  })
  return [...here, ...elsewhere].sort((a, b) => (a.at < b.at ? -1 : 1))
}

function sentencesOf(report: Omit<MonthReport, 'sentences'>, reader: Reader): string[] {
  const { cost, sumps, isOver, month, waste, corrections } = report
  const { mix, concentrate, water, byLevel } = cost.litres
  const volume = (litres: number) => sayVolume(litres, reader)
  const made = sumps.reduce((total, { readings }) => total + readings.strength, 0)
  const missed = sumps.filter(({ readings }) => readings.strength < readings.due)
  const out = sumps.reduce((total, { days }) => total + (days === null ? 0 : days.under + days.above), 0)
  const pickedUp = sum(waste.pickups.map(({ litres }) => litres ?? 0))
  const poured = { mix: volume(mix), concentrate: volume(concentrate), water: volume(water) }
  return [
    ...(isOver ? [] : [say('{month} is not over: these are its days so far.', { month: sayMonth(month, reader) })]),
    ...cost.sentences,
    byLevel.fills === 0
      ? say('{mix} of mix were poured: {concentrate} of concentrate and {water} of water as written.', poured)
      : say(
          '{mix} of mix were poured: {concentrate} of concentrate and {water} of water as written; {fills, plural, one {# fill} other {# fills}} besides, about {byLevel} by the level read before.',
          { ...poured, fills: byLevel.fills, byLevel: volume(byLevel.mix) },
        ),
    missed.length === 0
      ? say(
          'The strength was read {made, plural, one {# time} other {# times}}, everywhere as often as it was due. Sumps stood outside their bands on {out, plural, one {# day} other {# days}} in all.',
          { made, out },
        )
      : say(
          'The strength was read {made, plural, one {# time} other {# times}}; less often than due at {missed, plural, one {# sump} other {# sumps}}. Sumps stood outside their bands on {out, plural, one {# day} other {# days}} in all.',
          { made, out, missed: missed.length },
        ),
    ...(waste.pickups.length === 0
      ? []
      : [
          say(
            '{pickups, plural, one {# pickup of waste, {volume} as written.} other {# pickups of waste, {volume} as written.}}',
            { pickups: waste.pickups.length, volume: volume(pickedUp) },
          ),
        ]),
    corrections.length === 0
      ? say('Nothing of this month was withdrawn.')
      : say('{count, plural, one {# entry withdrawn; each is shown.} other {# entries withdrawn; each is shown.}}', {
          count: corrections.length,
        }),
  ]
}
