import { fluidOf } from '../shop/fluids.ts'
import type { SumpPlan } from '../shop/sumps.ts'
import { growthAfter } from './growth.ts'
import type { Job } from './jobs.ts'
import { dayHourOf, type ShopDays } from './shop-days.ts'
import { concentrationOf, deplete, evaporate, type SumpTruth, takeOut, trampOilOf } from './sump-truth.ts'
import type { DayWeather } from './weather.ts'

/** A sump at work. */
export interface SumpRun {
  plan: SumpPlan
  truth: SumpTruth
  /** How far its truth has come. */
  clockMs: number
  /** Running at all, by day. */
  runs: readonly boolean[]
  /** How busy, by day; 1 is all of the shift. */
  busy: readonly number[]
  jobs: readonly Job[]
  /** Percent in the middle of its band; 100 for a straight oil. */
  target: number
  leak: Leak | null
}

/** A seam that weeps: the fluid sinks towards its height. */
export interface Leak {
  fromMs: number
  /** Litres that stay below it. */
  height: number
  /** Share of what stands above it that leaves in an hour. */
  perHour: number
}

/** Where and when the sumps stand. */
export interface Surroundings {
  days: ShopDays
  weather: readonly DayWeather[]
}

/** What a day at rest evaporates to a running day. */
const restingShare = 0.2
/** Of concentrate, a day: emulsifier that goes with chips and soap faster than the rest. */
const depletedPerDay = 0.0005
/** Of the hardness, a day: what drops out as scum. */
const scumPerDay = 0.001
const hourMs = 3_600_000

export const targetOf = ({ document }: SumpPlan): number => fluidOf(document.fluid).limits?.concentration?.target ?? 100

export function isRunning({ plan, runs }: SumpRun, { days }: Surroundings, ms: number): boolean {
  const { day, hours } = dayHourOf(days, ms)
  const { from, to } = plan.nature.shift
  return runs[day] === true && hours >= from && hours < to
}

/** Litres that stand in the sump itself, what is out in the lines left out. */
export function standingVolume(run: SumpRun, around: Surroundings, ms: number): number {
  const { document, nature } = run.plan
  const out = isRunning(run, around, ms) ? document.holdUp * nature.holdUpScale : 0
  return Math.max(0, run.truth.volume - out)
}

/** Lets time pass in a sump, by the hour. */
export function advance(run: SumpRun, around: Surroundings, toMs: number): void {
  while (run.clockMs < toMs) {
    const nextMs = Math.min(toMs, (Math.floor(run.clockMs / hourMs) + 1) * hourMs)
    pass(run, around, (nextMs - run.clockMs) / hourMs)
    run.clockMs = nextMs
  }
}

function pass(run: SumpRun, around: Surroundings, hours: number): void {
  const { truth, plan } = run
  const { day } = dayHourOf(around.days, run.clockMs)
  const weather = around.weather[day]!
  const running = isRunning(run, around, run.clockMs)
  const shiftShare = hours / (plan.nature.shift.to - plan.nature.shift.from)
  const dayShare = running ? run.busy[day]! * shiftShare : (restingShare * hours) / 24
  evaporate(truth, day, plan.nature.evaporation * weather.evaporation * dayShare)
  if (running) carryOff(run, day, shiftShare)
  leak(run, day, hours)
  if (run.target === 100) return
  deplete(truth, day, { concentrate: (depletedPerDay * hours) / 24, hardness: (scumPerDay * hours) / 24 })
  truth.bacteria = growthAfter(truth.bacteria, hours, {
    concentration: concentrationOf(truth),
    target: run.target,
    temperature: running ? weather.runningTemperature : weather.restingTemperature,
    running,
    trampOil: trampOilOf(truth),
  })
}

function carryOff({ truth, plan, busy, jobs }: SumpRun, day: number, shiftShare: number): void {
  takeOut(truth, day, 'carried-off', plan.nature.carryOff * jobs[day]!.carryOff * busy[day]! * shiftShare)
  truth.trampOil += plan.nature.trampOil * busy[day]! * shiftShare
}

function leak({ truth, leak, clockMs }: SumpRun, day: number, hours: number): void {
  if (leak === null || clockMs < leak.fromMs) return
  takeOut(truth, day, 'leaked', Math.max(0, truth.volume - leak.height) * Math.min(1, leak.perHour * hours))
}
