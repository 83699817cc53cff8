import { sumpPlans } from '../shop/sumps.ts'
import { waterOf } from '../shop/waters.ts'
import { type Agenda, agenda } from './agenda.ts'
import { type Calendar, calendarOf } from './calendar.ts'
import { type Job, jobsOf } from './jobs.ts'
import { type Journal, journalOf } from './journal.ts'
import { type Random, randomOf } from './random.ts'
import { lastDay, type ShopDays, shopDays } from './shop-days.ts'
import { type SumpRun, targetOf } from './sump-run.ts'
import { emptySump, takeIn } from './sump-truth.ts'
import { type DayWeather, weatherOf } from './weather.ts'

/** A year and a fortnight. */
export const daysTold = 379
export const timeZone = 'Europe/Berlin'

/** The whole shop at work. */
export interface ShopRun {
  days: ShopDays
  /** Index of the last day. */
  last: number
  calendar: Calendar
  weather: readonly DayWeather[]
  agenda: Agenda
  journal: Journal
  sumps: readonly SumpRun[]
  /** A stream of chance of its own for every name. */
  randomOf(name: string): Random
  /** What the mixer gives to a percent of what its dial promises. */
  mixerGain: number
  /** °Brix that the refractometer shows on water. */
  refractometerZero: number
  /** Which water each sump is topped up with. */
  waterOf: Map<string, string>
  /** Count of the hose meter. */
  meterCount: number
  /** Whether any count was written down yet. */
  meterWritten: boolean
  /** Litres of concentrate used of each fluid, whether written down or not. */
  used: Map<string, number>
  /** Litres in each waste container since its last pickup. */
  waste: Map<string, number>
  /** Pickups so far. */
  pickups: number
  /** Sumps at which a reading was already written down wrong. */
  slipped: Set<string>
  /** What the late shift could tell of a day: the names of the sumps that were topped up. */
  poured: Map<number, string[]>
}

/** Days on which a machine stood that otherwise had work, counted back from the last. */
export const standstills: Readonly<Record<string, { from: number; to: number }>> = {
  grinder: { from: 64, to: 58 },
  mill8: { from: 150, to: 142 },
}

/** The shop on the first morning. */
export function shopAtStart(seed: number, until: string): ShopRun {
  const stream = (name: string) => randomOf(seed, name)
  const days = shopDays(until, timeZone, daysTold)
  const calendar = calendarOf(days)
  return {
    days,
    last: lastDay(days),
    calendar,
    weather: weatherOf(days, stream('weather')),
    agenda: agenda(),
    journal: journalOf(days, stream('journal')),
    sumps: sumpPlans.map((plan) => sumpAtStart(plan, days, calendar, stream(`sump ${plan.document.id}`))),
    randomOf: stream,
    mixerGain: 0.98,
    refractometerZero: 0,
    waterOf: new Map(sumpPlans.map(({ document, habits }) => [document.id, habits.water])),
    meterCount: 18_230,
    meterWritten: false,
    used: new Map(),
    slipped: new Set(),
    waste: new Map(),
    pickups: 0,
    poured: new Map(),
  }
}

/** @throws {RangeError} no such sump */
export function sumpOf({ sumps }: ShopRun, id: string): SumpRun {
  const found = sumps.find(({ plan }) => plan.document.id === id)
  if (found === undefined) throw new RangeError(`no sump ${id}`)
  return found
}

/** Whether a machine stood although the shop worked. */
export function standsStill({ last }: { last: number }, sump: string, day: number): boolean {
  const span = standstills[sump]
  return span !== undefined && day >= last - span.from && day <= last - span.to
}

/** The next day from `day` on on which the shop works. */
export function openFrom({ calendar, last }: ShopRun, day: number): number {
  let open = Math.max(0, day)
  while (open < last && calendar.open[open] !== true) open++
  return open
}

function sumpAtStart(plan: SumpRun['plan'], days: ShopDays, calendar: Calendar, random: Random): SumpRun {
  const { document, nature, habits } = plan
  const target = targetOf(plan)
  const last = lastDay(days)
  const truth = emptySump()
  const volume = document.fillVolume * nature.volumeScale * random.between(0.88, 0.97)
  const hardness = document.fluid === 'oil-22' ? 0 : waterOf(habits.water).hardness + random.between(60, 150)
  const strength = target === 100 ? 100 : target * random.between(0.9, 1.05)
  takeIn(truth, 0, 'at-start', { volume, strength, hardness })
  truth.bacteria = random.between(2.5, 4)
  const kind = document.id.startsWith('tc') || document.name.includes('lathe') ? 'turning' : 'milling'
  const jobs: Job[] = jobsOf(calendar.open, document.metals, kind, random)
  return {
    plan,
    truth,
    clockMs: days.midnights[0]!,
    runs: calendar.open.map((open, day) => open && !standsStill({ last }, document.id, day)),
    busy: calendar.open.map(() => random.between(0.6, 1)),
    jobs,
    target,
    leak: null,
  }
}
