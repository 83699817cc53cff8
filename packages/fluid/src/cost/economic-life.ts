import { halve } from '../halve.ts'
import type { Days } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** What a charge costs: to change, to keep, and where it spoils before its time. Money in one unit, whichever. */
export interface LifeQuestion {
  /** Of a planned change: drain, clean, fill, waste, downtime. Above 0. */
  changeCost: number
  /** Cost a day at an age of t days: start + growth × t. */
  running: {
    /** A day, of a fresh charge. */
    start: number
    /** A day, for each day of age, 0 or more. */
    growth: number
  }
  /** A charge that may spoil by itself and is then changed at once; left out, it never does. */
  spoiling?: Spoiling | undefined
}

/** Ages at which charges spoil, a Weibull distribution: 63.2 % have by `scale`. */
export interface Spoiling {
  /** Above 0. */
  scale: Days
  /** From 1: the older, the likelier. */
  shape: number
  /** Of a change that a spoiled charge forces, no less than a planned one. */
  cost: number
}

export interface LifePoint {
  days: Days
  /** On average over a life of so many days. */
  costPerDay: number
}

/** The age at which a change costs least on average, or that no age does. */
export type EconomicLife =
  | { outcome: 'change'; days: Days; costPerDay: number; curve: LifePoint[] }
  | { outcome: 'never'; days: null; costPerDay: number; curve: LifePoint[] }

/**
 * The age at which changing a charge costs least over the years: a life of T days costs on average
 *
 *     costPerDay(T) = changeCost / T + start + growth × T / 2
 *     days = √(2 × changeCost / growth)            costPerDay(days) = start + √(2 × changeCost × growth)
 *
 * and where it may spoil first, with R(t) = exp(−(t / scale)^shape) the share that has not by the age of t,
 *
 *     costPerDay(T) = (changeCost × R(T) + cost × (1 − R(T)) + ∫₀ᵀ (start + growth × t) R(t) dt) / ∫₀ᵀ R(t) dt
 *
 * The optimum is flat: what age and change cost together is 1.7 % more a fifth later and 2.5 % more a fifth sooner. An error of `growth` moves `days` by half of it.
 * **Condition comes first**: a split, septic or skin-irritating charge goes at once, whatever its age.
 *
 * Source: renewal-reward theorem; R. E. Barlow, L. C. Hunter, Optimum Preventive Maintenance Policies, Operations Research 8 (1960), from memory.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example economicLife({ changeCost: 400, running: { start: 2, growth: 0.02 } }) // 200 days, 6 a day
 */
export function economicLife(question: LifeQuestion): EconomicLife {
  requireQuestion(question)
  const { changeCost, running, spoiling } = question
  const average = (days: Days) => averageCost(question, days)
  const days =
    spoiling === undefined
      ? running.growth === 0
        ? null
        : Math.sqrt((2 * changeCost) / running.growth)
      : bestAge(question, spoiling)
  if (days === null) {
    const limit = spoiling === undefined ? running.start : average(Number.POSITIVE_INFINITY)
    return { outcome: 'never', days, costPerDay: limit, curve: curveOf(yearsOfAge, average) }
  }
  const costPerDay = spoiling === undefined ? running.start + Math.sqrt(2 * changeCost * running.growth) : average(days)
  return {
    outcome: 'change',
    days,
    costPerDay,
    curve: curveOf(
      sharesOfBest.map((share) => share * days),
      average,
    ),
  }
}

const sharesOfBest = [0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 3, 4]
const yearsOfAge = [30, 91, 182, 365, 730, 1825]

const curveOf = (ages: readonly Days[], average: (days: Days) => number): LifePoint[] =>
  ages.map((days) => ({ days, costPerDay: average(days) }))

function averageCost({ changeCost, running: { start, growth }, spoiling }: LifeQuestion, days: Days): number {
  if (spoiling === undefined) return changeCost / days + start + (growth * days) / 2
  const { lived, aged } = livedBy(spoiling, days)
  const left = survival(spoiling, days)
  return (changeCost * left + spoiling.cost * (1 - left) + start * lived + growth * aged) / lived
}

/**
 * What one more day costs, start + growth × T + (cost − changeCost) × hazard, rises with age: the average is least where the two meet, and
 * falls for ever where they never do.
 */
function bestAge(question: LifeQuestion, spoiling: Spoiling): Days | null {
  const { changeCost, running } = question
  const extra = spoiling.cost - changeCost
  const rises = running.growth > 0 || (spoiling.shape > 1 && extra > 0)
  if (!rises) return null
  const isCheaperToKeep = (days: Days) => {
    const { scale, shape } = spoiling
    const hazard = (shape / scale) * (days / scale) ** (shape - 1)
    const margin = running.start + running.growth * days + extra * hazard
    return days === 0 || margin < averageCost(question, days)
  }
  let high = spoiling.scale
  while (isCheaperToKeep(high)) {
    high *= 2
    if (high > 1e15) return null
  }
  return halve(0, high, isCheaperToKeep)
}

const survival = ({ scale, shape }: Spoiling, days: Days) => Math.exp(-((days / scale) ** shape))

/** Intervals of Simpson's rule. */
const panels = 400
/** Beyond this age, in shares of `scale` raised to `shape`, nothing is left that counts. */
const negligible = 50

/**
 * ∫₀ᵀ R(t) dt and ∫₀ᵀ t R(t) dt, by Simpson's rule over u with t = end × u³: of a shape just above 1, R bends without end at 0, and the rule would err there by
 * another amount for every T.
 */
function livedBy(spoiling: Spoiling, days: Days): { lived: Days; aged: number } {
  const end = Math.min(days, spoiling.scale * negligible ** (1 / spoiling.shape))
  let [lived, aged] = [0, 0]
  for (let i = 1; i <= panels; i += 1) {
    const u = i / panels
    const at = end * u ** 3
    const weight = (i === panels ? 1 : i % 2 === 1 ? 4 : 2) * 3 * end * u * u * survival(spoiling, at)
    lived += weight
    aged += weight * at
  }
  return { lived: lived / (3 * panels), aged: aged / (3 * panels) }
}

function requireQuestion({ changeCost, running, spoiling }: LifeQuestion): void {
  requireRange('changeCost', changeCost, { above: 0 })
  requireRange('running.start', running.start, { min: 0 })
  requireRange('running.growth', running.growth, { min: 0 })
  if (spoiling === undefined) return
  requireRange('spoiling.scale', spoiling.scale, { above: 0 })
  requireRange('spoiling.shape', spoiling.shape, { min: 1, max: 20 })
  requireRange('spoiling.cost', spoiling.cost, { min: changeCost })
}
