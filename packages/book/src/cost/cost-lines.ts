import { type MicroCents, microCents, say } from '@sumpbook/fluid'
import { amountOf, textOf } from '../estimate/amounts.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { Things } from '../setup/things.ts'
import type { CostPart } from './answer-types.ts'
import { type PourLine, poursOf } from './pours.ts'
import { additivePrice, concentratePrice, costsAt, type LotPrices, wastePrice, waterPrice } from './prices.ts'
import type { Recorded, SpanRecords } from './records.ts'
import { monthOf } from './span.ts'
import { type Stop, stopsOf } from './stops.ts'

/** What a cost is part of, in the order in which it is said. */
export const costParts = [
  'concentrate',
  'water',
  'additives',
  'cleanouts',
  'rounds',
  'waste',
] as const satisfies readonly CostPart[]

/** What one entry cost, or a stop. */
export interface CostLine {
  part: CostPart
  /** Null where it belongs to the shop. */
  sump: string | null
  month: string
  /** In days of the shop. */
  day: number
  /** Whether it is of a fresh charge, and not of keeping one. */
  isCharge: boolean
  cost: MicroCents
  /** Whether its litres are reckoned from a level and were not written. */
  estimated: boolean
}

/** Why something was not counted; `name` is of the thing that lacks a figure. */
export type Gap =
  | { what: 'fill-unmeasured' | 'strength-unknown'; name: string }
  | { what: 'concentrate-price' | 'water-price' | 'additive-price' | 'waste-price'; name: string }
  | { what: 'waste-unmeasured' | 'additive-unmeasured' | 'beyond-measure'; name: string }
  | { what: 'labour' | 'machine-hours' | 'minutes-per-stop' | 'cleaner-price' | 'cleanout-hours'; name: string }

/** A gap and the sump it belongs to; null where it belongs to the shop. */
export type SumpGap = Gap & { sump: string | null }

/** Everything that cost something, and everything that could not be counted. */
export interface CostLines {
  pours: PourLine[]
  stops: Stop[]
  lines: CostLine[]
  gaps: SumpGap[]
}

type Where = Pick<CostLine, 'sump' | 'day'> & { estimated?: boolean; isCharge?: boolean }

/** Collects lines; what lacks an amount or a price becomes a gap. */
class Bill {
  readonly lines: CostLine[] = []
  readonly gaps: SumpGap[] = []

  add(part: CostPart, where: Where, { amount, price }: { amount: number; price: number | null }, gap: Gap): void {
    if (amount === 0) return
    if (price === null) {
      this.gaps.push({ ...gap, sump: where.sump })
      return
    }
    const cost = microCents(amount, price)
    if (cost === null) this.gaps.push({ what: 'beyond-measure', name: gap.name, sump: where.sump })
    else this.lines.push({ part, month: monthOf(where.day), estimated: false, isCharge: false, ...where, cost })
  }
}

/** What a span cost, entry by entry, each at the prices of its own time. */
export function costLinesOf(records: SpanRecords): CostLines {
  const { entries, history } = records
  const { lots } = records
  const bill = new Bill()
  const pours = poursOf(records)
  for (const pour of pours) billPour(bill, pour, history.at(pour.at), lots)
  for (const recorded of entries) {
    const then = history.at(recorded.at)
    if (recorded.entry.kind === 'addition') billAdditive(bill, recorded.entry, recorded, then)
    if (recorded.entry.kind === 'cleanout') billCleanout(bill, recorded.entry, recorded, then)
    if (recorded.entry.kind === 'pickup') billPickup(bill, recorded.entry, recorded, then)
  }
  const stops = stopsOf(entries)
  for (const stop of stops) billStop(bill, stop, history.at(stop.at))
  return { pours, stops, lines: bill.lines, gaps: bill.gaps }
}

function billPour(bill: Bill, pour: PourLine, then: Things, lots: LotPrices): void {
  const name = then.sump.get(pour.sump)?.name ?? pour.sump
  if (pour.mix === null) {
    bill.gaps.push({ what: 'fill-unmeasured', name, sump: pour.sump })
    return
  }
  if (pour.concentrate === null || pour.waterLitres === null) {
    if (pour.mix > 0) bill.gaps.push({ what: 'strength-unknown', name, sump: pour.sump })
    return
  }
  const where = {
    sump: pour.sump,
    day: pour.day,
    estimated: pour.measure === 'by-level',
    isCharge: pour.kind === 'charge',
  }
  const concentrate = { amount: pour.concentrate, price: concentratePrice(pour, then, lots) }
  const fluid = then.fluid.get(pour.fluid)?.name ?? pour.fluid
  bill.add('concentrate', where, concentrate, { what: 'concentrate-price', name: fluid })
  const water = { amount: pour.waterLitres, price: waterPrice(pour.water, then) }
  const waterName = then.water.get(pour.water ?? '')?.name ?? pour.water ?? ''
  bill.add('water', where, water, { what: 'water-price', name: waterName })
}

function billAdditive(bill: Bill, { additive, sump }: EntryOf<'addition'>, { day }: Recorded, then: Things): void {
  if (additive === undefined) return
  const name = additive.name ?? say('an additive without a name')
  const amount = amountOf(additive.litres)
  if (amount === null) bill.gaps.push({ what: 'additive-unmeasured', name, sump })
  else {
    const price = additivePrice(additive.name, costsAt(then))
    bill.add('additives', { sump, day }, { amount, price }, { what: 'additive-price', name })
  }
}

/** Cleaner in a full sump, hours of whoever did it, and as many for every machine that stood. */
function billCleanout(bill: Bill, entry: EntryOf<'cleanout'>, { day }: Recorded, then: Things): void {
  const { labourPerHour = null, machinePerHour = null, cleanerPerLitre = null } = costsAt(then)
  const sump = then.sump.get(entry.sump)
  const name = sump?.name ?? entry.sump
  const where = { sump: entry.sump, day }
  const cleaner = ((sump?.fillVolume ?? 0) * (amountOf(entry.cleanerPercent) ?? 0)) / 100
  bill.add('cleanouts', where, { amount: cleaner, price: cleanerPerLitre }, { what: 'cleaner-price', name })
  const hours = amountOf(entry.hours)
  if (hours === null) {
    bill.gaps.push({ what: 'cleanout-hours', name, sump: entry.sump })
    return
  }
  bill.add('cleanouts', where, { amount: hours, price: labourPerHour }, { what: 'labour', name })
  const stood = hours * Math.max(1, sump?.machines?.length ?? 1)
  bill.add('cleanouts', where, { amount: stood, price: machinePerHour }, { what: 'machine-hours', name })
}

function billPickup(bill: Bill, entry: EntryOf<'pickup'>, { day }: Recorded, then: Things): void {
  const costs = costsAt(then)
  const stream = textOf(entry.stream) ?? then.waste.get(entry.about.id ?? '')?.stream ?? null
  const name = stream ?? say('waste without a stream')
  const where = { sump: null, day }
  const { perLitre, perKilogram } = wastePrice(stream, costs)
  const [litres, kilograms] = [amountOf(entry.litres), amountOf(entry.kilograms)]
  const gap: Gap = { what: 'waste-price', name }
  if (kilograms !== null && perKilogram !== null)
    bill.add('waste', where, { amount: kilograms, price: perKilogram }, gap)
  else if (litres !== null) bill.add('waste', where, { amount: litres, price: perLitre }, gap)
  else bill.gaps.push({ what: 'waste-unmeasured', name, sump: null })
  if (costs.wastePerPickup !== undefined) bill.add('waste', where, { amount: 1, price: costs.wastePerPickup }, gap)
}

function billStop(bill: Bill, { sump, day }: Stop, then: Things): void {
  const { labourPerHour = null, minutesPerStop } = costsAt(then)
  const name = then.sump.get(sump)?.name ?? sump
  if (minutesPerStop === undefined) {
    bill.gaps.push({ what: 'minutes-per-stop', name, sump })
    return
  }
  const where = { sump, day }
  bill.add('rounds', where, { amount: minutesPerStop / 60, price: labourPerHour }, { what: 'labour', name })
}
