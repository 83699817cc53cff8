/** Invented shops for tests: events with nothing said that a test does not say. Test files only. */
import { type Belief, newBelief } from '../filter/index.ts'
import type { AdditionEvent, ChargeEvent, ReadingEvent, ShopEvent, ShopTime, SumpSpec, WorkCalendar } from './events.ts'
import { openShopEstimate } from './pack.ts'
import type { ShopPriors } from './priors.ts'
import type { ShopEstimate, SumpState } from './shop-estimate.ts'
import { size } from './state.ts'
import { takeDay } from './take-day.ts'

export const everyDay: WorkCalendar = { workDays: [1, 2, 3, 4, 5, 6, 7], shutdowns: [] }
/** 1970-01-01, day 0, was a Thursday; day 4 a Monday. */
export const mondayToFriday: WorkCalendar = { workDays: [1, 2, 3, 4, 5], shutdowns: [] }

export const specOf = (spec: Partial<SumpSpec> = {}): SumpSpec => ({
  mark: 200,
  capacity: 240,
  minVolume: 60,
  holdUp: 20,
  group: 'stand-alone',
  fluid: 'a',
  target: 8,
  ...spec,
})

const unknownWater = { hardness: null, chloride: null }

export const setup = (sump: string, spec: Partial<SumpSpec> = {}, at: ShopTime = 0): ShopEvent => ({
  kind: 'setup',
  id: `setup ${sump} ${at}`,
  at,
  sump,
  spec: specOf(spec),
})

export const charge = (sump: string, at: ShopTime, said: Partial<ChargeEvent> = {}): ChargeEvent => ({
  kind: 'charge',
  id: `charge ${sump} ${at}`,
  at,
  sump,
  volume: null,
  strength: 8,
  water: unknownWater,
  fluid: 'a',
  heldBack: null,
  ...said,
})

export const addition = (sump: string, at: ShopTime, said: Partial<AdditionEvent> = {}): AdditionEvent => ({
  kind: 'addition',
  id: `addition ${sump} ${at}`,
  at,
  sump,
  amount: 'to-mark',
  strength: 6,
  water: unknownWater,
  fluid: 'a',
  ...said,
})

/** A refractometer of 0.1 °Brix on a fluid of 1 percent per °Brix. */
export const reading = (sump: string, at: ShopTime, said: Partial<ReadingEvent> = {}): ReadingEvent => ({
  kind: 'reading',
  id: `reading ${sump} ${at}`,
  at,
  sump,
  brix: null,
  scales: new Map([['a', { factor: 1 }]]),
  resolution: 0.1,
  instrument: 'refractometer',
  titration: null,
  hardness: null,
  chloride: null,
  conductivity: null,
  seen: null,
  pumps: 'stopped',
  ...said,
})

/** A shop told its events, day by day, in the order given within a day. */
export function shopOf(
  events: readonly ShopEvent[],
  { calendar = everyDay, priors }: { calendar?: WorkCalendar; priors?: ShopPriors } = {},
): ShopEstimate {
  const shop = openShopEstimate(calendar, priors)
  tell(shop, events)
  return shop
}

export function tell(shop: ShopEstimate, events: readonly ShopEvent[]): void {
  const days = Map.groupBy(events, ({ at }) => Math.floor(at))
  for (const [day, ofDay] of [...days].sort(([a], [b]) => a - b)) takeDay(shop, day, ofDay)
}

export function sumpOf(shop: ShopEstimate, id = 's'): SumpState {
  const sump = shop.sumps.get(id)
  if (sump === undefined) throw new Error(`no sump ${id}`)
  return sump
}

/** A belief of a sump with some means, and variances, said; all others certain zeros. */
export function beliefOf(means: Record<number, number>, variances: Record<number, number> = {}): Belief {
  const belief = newBelief(size)
  for (const [i, mean] of Object.entries(means)) belief.mean[Number(i)] = mean
  for (const [i, variance] of Object.entries(variances)) belief.cov[Number(i) * (size + 1)] = variance
  return belief
}

/** Shares from 0 to 1 without rhyme, the same every time. */
export function chance(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

/** A standard normal figure. */
export const normalFrom = (next: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next())

/** What a sump really does, by hand: litres, litres a day, percent. */
export interface TrueSump {
  volume: number
  concentration: number
  evaporation: number
  carryOff: number
}

/** A day of it, in hundredths: what evaporates leaves the concentrate behind, what is carried off takes it along. */
export function trueDay(sump: TrueSump): void {
  for (let k = 0; k < 100; k++) {
    const concentrate = sump.volume * sump.concentration - (sump.carryOff / 100) * sump.concentration
    sump.volume -= (sump.evaporation + sump.carryOff) / 100
    sump.concentration = concentrate / sump.volume
  }
}

export function truePour(sump: TrueSump, litres: number, strength: number): void {
  const concentrate = sump.volume * sump.concentration + litres * strength
  sump.volume += litres
  sump.concentration = concentrate / sump.volume
}

/** A sump that is kept well and written up honestly for some weeks: its events, and how it really stands at the end. */
export interface KeptSump {
  events: ShopEvent[]
  truth: TrueSump
  /** The time of the last visit. */
  at: ShopTime
}

export interface Keeping {
  weeks?: number
  evaporation?: number
  carryOff?: number
  target?: number
  spec?: Partial<SumpSpec>
  instrument?: string
}

/** Twice a week read in the morning, to a tenth and to 2 L, and filled up to 200 L with measured litres of what holds the target. */
export function keptSump(sump: string, keeping: Keeping = {}): KeptSump {
  const { weeks = 6, evaporation = 1.5, carryOff = 3, target = 8, spec = {}, instrument = 'refractometer' } = keeping
  const truth = { volume: 200, concentration: target, evaporation, carryOff }
  const strength = (target * carryOff) / (evaporation + carryOff)
  const water = { hardness: 150, chloride: 40 }
  const events: ShopEvent[] = [
    setup(sump, { target, ...spec }),
    charge(sump, 0.3, { volume: null, strength: target, water }),
  ]
  let at = 0.3
  for (let day = 1; day <= 7 * weeks; day++) {
    trueDay(truth)
    if (day % 7 !== 4 && day % 7 !== 0) continue
    at = day + 0.3
    events.push(readingOf(sump, at, truth, { instrument }))
    const litres = 200 - truth.volume
    truePour(truth, litres, strength)
    events.push(addition(sump, at + 0.02, { amount: litres, strength, water }))
  }
  return { events, truth, at }
}

/** What an honest reading of it shows. */
export const readingOf = (
  sump: string,
  at: ShopTime,
  { concentration, volume }: TrueSump,
  said: Partial<ReadingEvent> = {},
): ReadingEvent =>
  reading(sump, at, { brix: Math.round(10 * concentration) / 10, seen: 2 * Math.round(volume / 2), ...said })

export function trueDays(sump: TrueSump, days: number): void {
  for (let day = 0; day < days; day++) trueDay(sump)
}
