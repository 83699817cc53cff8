import type { Belief } from '../filter/index.ts'
import { blur, shake, spread } from '../filter/index.ts'
import { holdToBounds } from './bounds.ts'
import { chemistry, dayByDay, oil, type ShopPriors, spell, wander } from './priors.ts'
import {
  bias,
  carryOff,
  chloride,
  evaporation,
  fill,
  gain,
  gauge,
  hardness,
  mixMoving,
  moving,
  pours,
  scale,
  size,
  strength,
  titration,
} from './state.ts'

/** Time that passes at a sump, counted in working days' worth of each loss. */
export interface Exposure {
  /** Calendar days. */
  days: number
  evaporation: number
  carryOff: number
}

const jacobian = new Float64Array(moving * size)
const byEvaporation = new Float64Array(moving)
const byCarryOff = new Float64Array(moving)
const grown = new Float64Array(moving)

/**
 * The part of a time that one step takes, and how its growth depends on what it began with. Figures go between the functions of this file
 * through here: as arguments they would each be an object of their own, thousands a second.
 */
const part = new Float64Array(10)
const days = 0
const wet = 1
const oily = 2
const unrestSquared = 3
const growthByFill = 4
const growthByEvaporation = 5
const growthByCarryOff = 6
const growthItself = 7
/** Shares of the mark that are lost on a working day. */
const wetRate = 8
const oilyRate = 9

/** No step takes more than this share of what is there: a balance without records ends as a puddle, never below nothing. */
const mostLost = 0.3

/**
 * What a time does to a sump that nobody touches. Evaporation takes water alone, carry-off the fluid as it is, both at a
 * steady rate:
 *
 *     r₁ = r₀ − e − d,  C₁ = C₀ (r₀ / r₁)^(e / (e + d)) · (1 − k)^days,  the same for what is dissolved
 *
 * with e and d the losses of the time as shares of the mark. Days differ: the losses of a time have noise of their own, and the
 * rates wander.
 *
 * Source: conservation of mass; the closed form is that of a tank with constant in- and outflow.
 *
 * @param belief whole, or of level, strength and mark alone (`mixSize`)
 */
export function pass(belief: Belief, exposure: Exposure, unrest = 1): void {
  if (!(exposure.days > 0)) return
  const { mean } = belief
  part[wetRate] = Math.exp(mean[evaporation]!)
  part[oilyRate] = Math.exp(mean[carryOff]!)
  const lost = part[wetRate]! * exposure.evaporation + part[oilyRate]! * exposure.carryOff
  let left = 1
  for (let i = 0; i < mostSteps && left > 0; i++) {
    const most = (0.25 * Math.max(mean[fill]!, 0.03)) / Math.max(lost, 1e-9)
    const share = i === mostSteps - 1 ? left : Math.min(left, most)
    part[days] = exposure.days * share
    part[wet] = exposure.evaporation * share
    part[oily] = exposure.carryOff * share
    part[unrestSquared] = unrest * unrest
    flow(belief)
    unsettle(belief)
    left = share >= left ? 0 : left - share
  }
  holdToBounds(belief)
}

/** However long a time, it is cut into no more steps than this. */
const mostSteps = 30

function flow(belief: Belief): void {
  const { mean, size: n } = belief
  const isWhole = n === size
  const moves = isWhole ? moving : mixMoving
  const before = Math.max(mean[fill]!, 0.02)
  let e = part[wetRate]! * part[wet]!
  let d = part[oilyRate]! * part[oily]!
  const lost = e + d
  if (lost > mostLost * before) {
    e *= (mostLost * before) / lost
    d *= (mostLost * before) / lost
  }
  const after = before - e - d
  const ratio = Math.log(before / after)
  const sum = e + d
  const power = sum > 1e-12 ? e / sum : 0
  const growth = Math.exp(power * ratio)
  part[growthItself] = growth
  // Derivatives of the growth's logarithm.
  part[growthByFill] = power * (1 / before - 1 / after)
  part[growthByEvaporation] = (sum > 1e-12 ? (d / (sum * sum)) * ratio + power / after : 1 / before) * e
  part[growthByCarryOff] = (sum > 1e-12 ? (-e / (sum * sum)) * ratio + power / after : 0) * d

  const used = Math.exp(-chemistry.depletion * part[days]!)
  grown[strength] = mean[strength]! * growth * used

  for (let i = 0; i < moves * n; i++) jacobian[i] = 0
  jacobian[fill * n + fill] = 1
  jacobian[fill * n + evaporation] = -e
  jacobian[fill * n + carryOff] = -d
  jacobian[strength * n + strength] = growth * used
  grow(strength, n)
  if (isWhole) growMinerals(mean)
  spread(belief, moves, jacobian)

  mean[fill] = after
  for (let i = strength; i < moves; i++) mean[i] = grown[i]!
  if (isWhole && mean[bias]! < oil.most) mean[bias]! += oil.aDay * part[days]!
}

/** Minerals grow as the strength does; what soaps bind drops out, what chips bring comes on top. */
function growMinerals(mean: Float64Array): void {
  const n = size
  const growth = part[growthItself]!
  const outOf = 1 - Math.exp(-chemistry.scum * part[days]!)
  const soft = Math.max(0, mean[hardness]! - chemistry.scumAbove)
  grown[hardness] = mean[hardness]! * growth
  grown[chloride] = mean[chloride]! * growth
  jacobian[hardness * n + hardness] = soft > 0 ? growth - outOf : growth
  jacobian[chloride * n + chloride] = growth
  jacobian[hardness * n + gain] = part[days]!
  grow(hardness, n)
  grow(chloride, n)
  grown[hardness] = grown[hardness]! - soft * outOf + mean[gain]! * part[days]!
}

/** What nobody knows of a time just past: days that differ, rates and errors that wander; `unrest` scales the variances of the losses. */
function unsettle(belief: Belief): void {
  const { mean, cov, size: n } = belief
  const isWhole = n === size
  const moves = isWhole ? moving : mixMoving
  const time = part[days]! * part[unrestSquared]!
  const unrest = Math.sqrt(part[unrestSquared]!)
  const unlike = unrest * dayByDay.evaporation * Math.sqrt(1 / Math.max(part[wet]! / spell, 1))
  const unlikeCarried = unrest * dayByDay.carryOff * Math.sqrt(1 / Math.max(part[oily]! / spell, 1))
  for (let i = 0; i < moves; i++) {
    byEvaporation[i] = jacobian[i * n + evaporation]! * unlike
    byCarryOff[i] = jacobian[i * n + carryOff]! * unlikeCarried
  }
  shake(belief, moves, byEvaporation, 1)
  shake(belief, moves, byCarryOff, 1)
  cov[fill * n + fill]! += 0.002 ** 2 * time
  cov[strength * n + strength]! += (0.003 * mean[strength]!) ** 2 * time
  const long = part[days]!
  widen(cov, evaporation * (n + 1), wander.evaporation ** 2 * time, 0.9 ** 2)
  widen(cov, carryOff * (n + 1), wander.carryOff ** 2 * time, 0.9 ** 2)
  widen(cov, scale * (n + 1), wander.scale ** 2 * long, 0.5 ** 2)
  if (!isWhole) return
  cov[hardness * n + hardness]! += ((wander.hardness * mean[hardness]!) ** 2 + 3) * time
  cov[chloride * n + chloride]! += ((wander.chloride * mean[chloride]!) ** 2 + 0.2) * time
  widen(cov, bias * (n + 1), wander.bias ** 2 * long, 0.6 ** 2)
  widen(cov, titration * (n + 1), wander.titration ** 2 * long, 0.6 ** 2)
  widen(cov, pours * (n + 1), wander.pours ** 2 * long, 0.2 ** 2)
  widen(cov, gauge * (n + 1), wander.gauge ** 2 * long, 0.12 ** 2)
}

/** A quantity that grows by what evaporates, with what its growth depends on. */
function grow(i: number, n: number): void {
  const at = i * n
  const value = grown[i]!
  jacobian[at + fill] = value * part[growthByFill]!
  jacobian[at + evaporation] = value * part[growthByEvaporation]!
  jacobian[at + carryOff] = value * part[growthByCarryOff]!
}

/** What wanders does not wander off for ever: no wider than a variance of `most`. */
function widen(cov: Float64Array, at: number, variance: number, most: number): void {
  if (cov[at]! < most) cov[at] = Math.min(most, cov[at]! + variance)
}

/**
 * Takes the losses of some working days out again that turn out to have been idle: what was reckoned as work less what goes on at rest.
 */
export function takeBack(belief: Belief, workDays: number, idle: ShopPriors['idle']): void {
  const { mean } = belief
  const some = Math.min(workDays, 20)
  const water = Math.exp(mean[evaporation]!) * some * (1 - idle.evaporation)
  const fluid = Math.exp(mean[carryOff]!) * some * (1 - idle.carryOff)
  const before = Math.max(mean[fill]!, 0.02)
  const shrink = (before + fluid) / (before + fluid + water)
  blur(belief, fill, (0.5 * (water + fluid)) ** 2)
  blur(belief, strength, (0.5 * (1 - shrink) * mean[strength]!) ** 2)
  mean[fill] = Math.max(before, Math.min(1.3, before + water + fluid))
  for (const i of [strength, hardness, chloride]) mean[i]! *= shrink
}
