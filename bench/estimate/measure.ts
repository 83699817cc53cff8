import { type Calibration, calibrationOf, type Foretold } from './metrics/calibration.ts'
import { coverageOf, type Interval } from './metrics/coverage.ts'
import { type Band, crossingError, crossingHorizon, firstCrossing } from './metrics/crossing.ts'
import { crpsOfNormal } from './metrics/crps.ts'
import { type DoubtScore, scoreDoubts } from './metrics/doubts.ts'
import { median, trimmedRmse } from './metrics/errors.ts'
import type { Figure, Peer, SumpEstimate } from './peers/peer.ts'
import type { SimulatedShop } from './world.ts'

/** All cases of one peer, figure by figure. */
export interface Tally {
  name: string
  cases: Map<string, Foretold[]>
  crossings: number[]
  doubts: DoubtScore[]
  /** Sumps whose half year was asked for doubts. */
  sumpHalfYears: number
  /** By the clock, and of the processor. */
  milliseconds: number
  busyMilliseconds: number
}

export const aheadDays = [7, 14] as const

export const emptyTally = (name: string): Tally => ({
  name,
  cases: new Map(),
  crossings: [],
  doubts: [],
  sumpHalfYears: 0,
  milliseconds: 0,
  busyMilliseconds: 0,
})

/** Asks a peer about every sump of a shop at some instants; at the last of them its doubts are judged as well. */
export async function askPeer(
  tally: Tally,
  peer: Peer,
  shop: SimulatedShop,
  instants: readonly number[],
): Promise<void> {
  const { book, truth, labels } = shop
  for (const atMs of instants) {
    const [before, busy] = [performance.now(), process.cpuUsage()]
    const estimates = await peer.estimate(book, { atMs, aheadDays })
    tally.milliseconds += performance.now() - before
    const { user, system } = process.cpuUsage(busy)
    tally.busyMilliseconds += (user + system) / 1000
    for (const { id } of book.sumps) {
      const estimate = estimates.get(id)
      if (estimate === undefined) throw new RangeError(`${peer.name} says nothing of sump ${id}`)
      const now = truth.at(id, atMs)
      const course = truth.ahead(id, atMs, crossingHorizon)
      keep(tally, 'concentration', estimate.now.concentration, now.concentration)
      keep(tally, 'volume', estimate.now.volume, now.volume)
      keep(tally, 'hardness', estimate.now.hardness, now.hardness)
      keep(tally, 'evaporation', estimate.now.evaporation, now.evaporation28)
      keep(tally, 'carryOff', estimate.now.carryOff, now.carryOff28)
      for (const ahead of estimate.ahead) {
        const came = course[ahead.days]!
        keep(tally, `concentration+${ahead.days}`, ahead.concentration, came.concentration)
        keep(tally, `volume+${ahead.days}`, ahead.volume, came.volume)
        keep(tally, `hardness+${ahead.days}`, ahead.hardness, came.hardness)
      }
      keepCrossing(
        tally,
        estimate,
        course.map(({ concentration }) => concentration),
        bandOf(shop, id, atMs),
      )
    }
    if (atMs !== instants.at(-1)) continue
    tally.sumpHalfYears += book.sumps.length
    const doubts = [...estimates.values()].flatMap((estimate) => estimate.doubts ?? [])
    tally.doubts.push(scoreDoubts(doubts, labels))
  }
}

function keep({ cases, name: peer }: Tally, name: string, figure: Figure, came: number): void {
  if (!isFinished(figure)) throw new RangeError(`${peer}: ${name} is ${JSON.stringify(figure)}`)
  const list = cases.get(name) ?? []
  if (list.length === 0) cases.set(name, list)
  list.push({ figure, came })
}

/** A figure that can be judged: finite, with a width. */
const isFinished = ({ mean, sd, low90, high90 }: Figure) => [mean, sd, low90, high90].every(Number.isFinite) && sd > 0

function keepCrossing({ crossings }: Tally, { crossingDays }: SumpEstimate, course: number[], band: Band): void {
  const came = firstCrossing(course, band)
  if (came !== null && crossingDays !== undefined) crossings.push(crossingError(crossingDays, came))
}

/** The band of the fluid that is in the sump at an instant. */
function bandOf({ book }: SimulatedShop, id: string, atMs: number): Band {
  const charge = book.entries.findLast(
    ({ kind, sump, at, fluid }) => kind === 'charge' && sump === id && fluid !== undefined && Date.parse(at) <= atMs,
  )
  const fluid = charge?.fluid ?? book.sumps.find((sump) => sump.id === id)!.fluid
  return book.fluids.find((one) => one.id === fluid)!.limits.concentration
}

export interface Measured {
  cases: number
  /** In the figure's own unit, largest 1 % left out. */
  trimmedRmse: number
  crps: number
  /** Percent of the truth. */
  medianErrorPercent: number
  coverage: number
  /** Between these honest 90 % intervals stay, if cases were independent. */
  honest: { low: number; high: number }
  calibration: Calibration
}

/** What a tally comes to. */
export function summarise(tally: Tally) {
  const figures = Object.fromEntries([...tally.cases].map(([name, cases]) => [name, measure(cases)]))
  const sum = (of: (score: DoubtScore) => number) => tally.doubts.reduce((total, score) => total + of(score), 0)
  const found = (of: (score: DoubtScore) => { found: number; of: number }) => ({
    found: sum((score) => of(score).found),
    of: sum((score) => of(score).of),
  })
  return {
    name: tally.name,
    milliseconds: Math.round(tally.milliseconds),
    busyMilliseconds: Math.round(tally.busyMilliseconds),
    figures,
    crossing: {
      cases: tally.crossings.length,
      medianAbsoluteDays: digits(median(tally.crossings.map(Math.abs))),
      medianDays: digits(median(tally.crossings)),
    },
    doubts: {
      misreads: found(({ misreads }) => misreads),
      wrongSumps: found(({ wrongSumps }) => wrongSumps),
      missing: found(({ missing }) => missing),
      instruments: found(({ instruments }) => instruments),
      falseASumpAndHalfYear: digits(sum(({ falseDoubts }) => falseDoubts) / tally.sumpHalfYears),
    },
  }
}

function measure(cases: readonly Foretold[]): Measured {
  const intervals: { interval: Interval; came: number }[] = cases.map(({ figure, came }) => ({
    interval: figure,
    came,
  }))
  const { share, honest } = coverageOf(intervals)
  return {
    cases: cases.length,
    trimmedRmse: digits(trimmedRmse(cases.map(({ figure, came }) => figure.mean - came))),
    crps: digits(cases.reduce((sum, { figure, came }) => sum + crpsOfNormal(figure, came), 0) / cases.length),
    medianErrorPercent: digits(median(cases.map(({ figure, came }) => (100 * Math.abs(figure.mean - came)) / came))),
    coverage: digits(share),
    honest: { low: digits(honest.low), high: digits(honest.high) },
    calibration: shortened(calibrationOf(cases)),
  }
}

const shortened = ({ held, under, over, tenths }: Calibration): Calibration => ({
  held: { '50': digits(held[50]), '80': digits(held[80]), '90': digits(held[90]), '95': digits(held[95]) },
  under: digits(under),
  over: digits(over),
  tenths: tenths.map(digits),
})

const digits = (value: number): number => Number(value.toPrecision(3))
