import { instantOf, stepsPerDay } from './clock.ts'
import { readSump } from './read-sump.ts'
import type { SimShop } from './shop-state.ts'
import type { SimSump } from './sump.ts'
import { correct, topUp } from './top-up.ts'

/** One walk with one refractometer. */
export interface Round {
  shop: SimShop
  step: number
  /** Place of the refractometer in the shop's list. */
  instrument: number
  /** °Brix by which it is off on this round. */
  offset: number
}

/** Walks past the sumps that are due in this half hour. */
export function walkRound(shop: SimShop, step: number): void {
  const due = shop.sumps.filter((sump) => isDue(sump, shop, step))
  if (due.length === 0) return
  const { chance, journal, clock } = shop
  const gross = chance.happens(0.015)
  const offset = gross ? chance.between(0.4, 0.8) * (chance.happens(0.5) ? 1 : -1) : chance.normal(0.06)
  const round: Round = { shop, step, instrument: chance.happens(0.7) ? 0 : 1, offset }
  const read = due.flatMap((sump, i) => {
    const minute = 1 + Math.floor((i * 28) / due.length)
    const entry = readSump(sump, round, minute)
    topUp(sump, shop, step, minute)
    correct(sump, shop, step, minute)
    return entry === null ? [] : [entry]
  })
  if (gross && read.length > 1) {
    const instrument = shop.equipment.refractometers[round.instrument]!.id
    const entries = read.map(({ id }) => id)
    journal.labels.instrumentsOff.push({ instrument, atMs: instantOf(clock, step), offset, entries })
  }
  // One round in forty puts two neighbours' figures in each other's lines.
  if (read.length > 1 && chance.happens(1 / 40)) swap(shop, read[0]!, read[1]!)
}

function swap(shop: SimShop, one: { id: string; sump?: string; brix?: number; at: string }, other: typeof one): void {
  const error = (other.brix ?? 0) - (one.brix ?? 0)
  const wronged = shop.journal.labels.wrongReadings
  if (Math.abs(error) < 0.5 || wronged.some(({ entry }) => entry === one.id || entry === other.id)) return
  const brix = one.brix!
  one.brix = other.brix!
  other.brix = brix
  wronged.push(
    { kind: 'wrong-sump', sump: one.sump!, entry: one.id, atMs: Date.parse(one.at), error },
    { kind: 'wrong-sump', sump: other.sump!, entry: other.id, atMs: Date.parse(other.at), error: -error },
  )
}

function isDue({ traits, losses }: SimSump, { clock }: SimShop, step: number): boolean {
  const day = Math.floor(step / stepsPerDay)
  if (step % stepsPerDay !== traits.roundHour * 2 || !traits.roundDays.includes(day % 7)) return false
  const noon = day * stepsPerDay + Math.floor(clock.opens + clock.closes)
  return losses.running[Math.min(noon, day * stepsPerDay + 46)] === 1
}
