import {
  type Cents,
  type Reader,
  type SaidGap,
  say,
  sayCost,
  sayDate,
  sayGap,
  sayMonth,
  unitsHere,
} from '@sumpbook/fluid'
import type { BookParts, TodayReader } from '../book-parts.ts'
import { BookError } from '../errors.ts'
import type { ThingHistory, Things } from '../setup/things.ts'
import type { Cost, DaySpan, SumpCost } from './answer-types.ts'
import { assumptionsOf, groundRules, namedPrices } from './assumptions.ts'
import { type CostLines, costLinesOf, costParts, type Gap } from './cost-lines.ts'
import { type CostCell, cellsOf, partsOf, sumCents, sumEstimated } from './cost-table.ts'
import { litresOf, sum } from './litres.ts'
import { readMachineHours } from './machine-hours.ts'
import { concentratePrice, waterPrice } from './prices.ts'
import { readRecords, type SpanRecords } from './records.ts'
import { monthOf } from './span.ts'

export interface CostQuestion extends DaySpan {
  /** One sump alone, without what belongs to the shop. */
  sump?: string | undefined
  reader?: TodayReader
}

/**
 * What a span of days cost, from the entries that stand.
 *
 * @throws {BookError} `refused-input` days that do not follow each other, `not-found` a sump the book does not have
 */
export async function readCost(parts: BookParts, question: CostQuestion): Promise<Cost> {
  const records = await readRecords(parts, question)
  return costOf(records, await readMachineHours(parts.journal, records), question)
}

/** The same from records at hand. */
export function costOf(
  records: SpanRecords,
  machineHours: ReadonlyMap<string, number>,
  { from, to, sump, reader = {} }: CostQuestion,
): Cost {
  const { things, span, history } = records
  if (sump !== undefined && !things.sump.has(sump)) {
    throw new BookError('not-found', `This book has no sump "${sump}".`)
  }
  const all = costLinesOf(records)
  const lines = sump === undefined ? all.lines : all.lines.filter((line) => line.sump === sump)
  const pours = sump === undefined ? all.pours : all.pours.filter((pour) => pour.sump === sump)
  const cells = cellsOf(lines)
  const { currency } = things.shop
  const then = history.at(new Date(span.before - 1).toISOString())
  const gaps = gapsOf(sump === undefined ? all.gaps : all.gaps.filter((gap) => gap.sump === sump))
  const months = [...new Set(monthsOf(records))].map((month) => {
    const of = cells.filter((cell) => cell.month === month)
    return { month, cents: sumCents(of), parts: partsOf(of) }
  })
  const litres = litresOf(pours)
  const cost = {
    from,
    to,
    sump: sump ?? null,
    currency,
    head: records.head,
    cents: sumCents(cells),
    estimated: sumEstimated(cells),
    parts: partsOf(cells),
    months,
    sumps: sumpCosts(records, all, { cells, machineHours, sump }),
    litres,
    ...pouredByKind(pours, then, records),
    assumptions: assumptionsOf(then),
    prices: namedPrices(then, additivesOf(records)),
    gaps: gaps.map((gap) => ({ ...gap, text: sayGap(gap) })),
    rules: groundRules(),
  }
  return { ...cost, sentences: sentencesOf(cost, { units: unitsHere(things.shop), ...reader }) }
}

const additivesOf = ({ entries }: SpanRecords) =>
  entries.flatMap(({ entry }) =>
    entry.kind === 'addition' && entry.additive?.name !== undefined ? [entry.additive.name] : [],
  )

const monthsOf = ({ span }: SpanRecords) => Array.from({ length: span.days }, (_, i) => monthOf(span.firstDay + i))

function sentencesOf(cost: Omit<Cost, 'sentences'>, reader: Reader): string[] {
  const [only, another] = cost.months
  const isWholeMonth = another === undefined && cost.from.endsWith('-01') && cost.to.slice(0, 7) === only!.month
  const when = isWholeMonth
    ? sayMonth(only!.month, reader)
    : say('{from} to {to}', { from: sayDate(cost.from), to: sayDate(cost.to) })
  const parts = costParts.map((part) => ({ part, cents: cost.parts[part] }))
  const { fills } = cost.litres.byLevel
  return [
    sayCost(when, parts, { ...reader, currency: cost.currency }),
    ...(fills === 0
      ? []
      : [
          say(
            '{fills, plural, one {# fill to the mark nobody measured: reckoned from the level read before.} other {# fills to the mark nobody measured: reckoned from the level read before.}}',
            { fills },
          ),
        ]),
  ]
}

interface Shares {
  cells: readonly CostCell[]
  machineHours: ReadonlyMap<string, number>
  sump: string | undefined
}

function sumpCosts(
  records: SpanRecords,
  { pours, stops }: CostLines,
  { cells, machineHours, sump }: Shares,
): SumpCost[] {
  const { things } = records
  const waste = wasteOf(records)
  const of = (id: string | null, name: string): SumpCost => {
    const own = cells.filter((cell) => cell.sump === id)
    const hours = id === null ? null : (machineHours.get(id) ?? null)
    const cents = sumCents(own)
    return {
      sump: id,
      name,
      cents,
      estimated: sumEstimated(own),
      parts: partsOf(own),
      litres: litresOf(id === null ? [] : pours.filter((pour) => pour.sump === id)),
      machineHours: hours,
      centsPerHour: hours === null || hours === 0 ? null : Math.round(cents / hours),
      stops: stops.filter((stop) => stop.sump === id).length,
      wasteLitres: id === null ? 0 : (waste.get(id) ?? 0),
    }
  }
  const inOrder = [...things.sump.values()].toSorted((a, b) => (a.order ?? 1e9) - (b.order ?? 1e9))
  const named = inOrder.filter(({ id }) => sump === undefined || id === sump).map(({ id, name }) => of(id, name))
  return sump === undefined ? [...named, of(null, say('The shop'))] : named
}

/** Litres that each sump gave as waste, as written. */
export function wasteOf({ entries }: Pick<SpanRecords, 'entries'>): Map<string, number> {
  const waste = new Map<string, number[]>()
  for (const { entry } of entries) {
    const litres =
      entry.kind === 'drawoff'
        ? entry.volume
        : entry.kind === 'cleanout'
          ? entry.wasteVolume
          : entry.kind === 'skim'
            ? entry.litres
            : undefined
    if (litres !== undefined && typeof entry.sump === 'string') {
      waste.set(entry.sump, [...(waste.get(entry.sump) ?? []), litres])
    }
  }
  return new Map([...waste].map(([sump, litres]) => [sump, sum(litres)]))
}

/** What was poured by fluid and by water, and what treated water cost beyond the cheapest. */
function pouredByKind(pours: CostLines['pours'], then: Things, { history, lots }: SpanRecords) {
  const known = pours.filter(({ concentrate }) => concentrate !== null)
  const fluids = [...Map.groupBy(known, ({ fluid }) => fluid)].map(([id, of]) => {
    const litres = sum(of.map(({ concentrate }) => concentrate!))
    const perLitre = concentratePrice({ fluid: id, lot: null }, then, lots)
    return { id, name: then.fluid.get(id)?.name ?? id, litres, perLitre }
  })
  const waters = [...Map.groupBy(known, ({ water }) => water)]
    .map(([id, of]) => ({
      id,
      name: then.water.get(id ?? '')?.name ?? say('Water of which nobody wrote which'),
      kind: then.water.get(id ?? '')?.kind ?? null,
      litres: sum(of.map(({ waterLitres }) => waterLitres!)),
      perLitre: waterPrice(id, then),
    }))
    .filter(({ litres }) => litres > 0)
  return { fluids: fluids.filter(({ litres }) => litres > 0), waters, treatedExtra: extraOf(known, history) }
}

function extraOf(pours: CostLines['pours'], history: ThingHistory): Cents | null {
  let extra = 0
  let isKnown = false
  for (const { water, waterLitres, at } of pours) {
    const then = history.at(at)
    const prices = [...then.water.values()].flatMap(({ costPerLitre }) =>
      costPerLitre === undefined ? [] : [costPerLitre],
    )
    const price = waterPrice(water, then)
    if (price === null || waterLitres === null) continue
    isKnown = true
    extra += waterLitres * (price - Math.min(price, ...prices))
  }
  return isKnown ? Math.round(100 * extra) : null
}

function gapsOf(gaps: readonly Gap[]): SaidGap[] {
  return [...Map.groupBy(gaps, ({ what }) => what)].map(([what, of]) => ({
    what,
    count: of.length,
    names: [...new Set(of.map(({ name }) => name))],
  }))
}
