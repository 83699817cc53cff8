import type { Belief } from '../filter/index.ts'
import { blur, shake, spread } from '../filter/index.ts'
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
 */
export function pass(belief: Belief, exposure: Exposure, unrest = 1): void {
  const { days } = exposure
  if (!(days > 0)) return
  const { mean } = belief
  let left = 1
  for (let i = 0; i < mostSteps && left > 0; i++) {
    const lost = Math.exp(mean[evaporation]!) * exposure.evaporation + Math.exp(mean[carryOff]!) * exposure.carryOff
    const part =
      i === mostSteps - 1 ? left : Math.min(left, (0.25 * Math.max(mean[fill]!, 0.03)) / Math.max(lost, 1e-9))
    step(belief, days * part, exposure.evaporation * part, exposure.carryOff * part)
    unsettle(belief, days * part, exposure.evaporation * part, exposure.carryOff * part, unrest ** 2)
    left = part >= left ? 0 : left - part
  }
}

/** However long a time, it is cut into no more steps than this. */
const mostSteps = 30

function step(belief: Belief, days: number, wet: number, oily: number): void {
  const { mean } = belief
  const n = size
  const before = Math.max(mean[fill]!, 0.02)
  let e = Math.exp(mean[evaporation]!) * wet
  let d = Math.exp(mean[carryOff]!) * oily
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
  // Derivatives of the growth's logarithm.
  const byFill = power * (1 / before - 1 / after)
  const byE = sum > 1e-12 ? (d / sum ** 2) * ratio + power / after : 1 / before
  const byD = sum > 1e-12 ? (-e / sum ** 2) * ratio + power / after : 0

  const used = Math.exp(-chemistry.depletion * days)
  const soft = Math.max(0, mean[hardness]! - chemistry.scumAbove)
  const dropped = soft * (1 - Math.exp(-chemistry.scum * days))
  const strengthAfter = mean[strength]! * growth * used
  const hardnessAfter = mean[hardness]! * growth - dropped + mean[gain]! * days
  const chlorideAfter = mean[chloride]! * growth

  jacobian.fill(0)
  jacobian[fill * n + fill] = 1
  jacobian[fill * n + evaporation] = -e
  jacobian[fill * n + carryOff] = -d
  const kept = soft > 0 ? growth - (1 - Math.exp(-chemistry.scum * days)) : growth
  grow(strength, strengthAfter, growth * used, byFill, byE * e, byD * d)
  grow(hardness, mean[hardness]! * growth, kept, byFill, byE * e, byD * d)
  jacobian[hardness * n + gain] = days
  grow(chloride, chlorideAfter, growth, byFill, byE * e, byD * d)
  spread(belief, moving, jacobian)

  mean[fill] = after
  mean[strength] = Math.min(strengthAfter, 99)
  mean[hardness] = Math.max(hardnessAfter, 0.5)
  mean[chloride] = chlorideAfter
  if (mean[bias]! < oil.most) mean[bias]! += oil.aDay * days
}

/** What nobody knows of a time just past: days that differ, rates and errors that wander; `unrest` scales the variances of the losses. */
function unsettle(belief: Belief, days: number, wet: number, oily: number, unrest: number): void {
  const { mean, cov } = belief
  const n = size
  const time = days * unrest
  for (let i = 0; i < moving; i++) {
    byEvaporation[i] = jacobian[i * n + evaporation]!
    byCarryOff[i] = jacobian[i * n + carryOff]!
  }
  shake(belief, moving, byEvaporation, (unrest * dayByDay.evaporation ** 2) / Math.max(wet / spell, 1))
  shake(belief, moving, byCarryOff, (unrest * dayByDay.carryOff ** 2) / Math.max(oily / spell, 1))
  blur(belief, fill, 0.002 ** 2 * time)
  blur(belief, strength, (0.003 * mean[strength]!) ** 2 * time)
  blur(belief, hardness, (wander.hardness * mean[hardness]!) ** 2 * time + 2 * time)
  blur(belief, chloride, (wander.chloride * mean[chloride]!) ** 2 * time + 0.2 * time)
  widen(cov, evaporation, wander.evaporation, time, 0.9)
  widen(cov, carryOff, wander.carryOff, time, 0.9)
  widen(cov, scale, wander.scale, days, 0.5)
  widen(cov, bias, wander.bias, days, 0.6)
  widen(cov, titration, wander.titration, days, 0.6)
  widen(cov, pours, wander.pours, days, 0.2)
  widen(cov, gauge, wander.gauge, days, 0.12)
}

/** A quantity that grows by what evaporates, with what its growth depends on. */
function grow(i: number, value: number, own: number, byFill: number, byE: number, byD: number): void {
  const at = i * size
  jacobian[at + i] = own
  jacobian[at + fill] = value * byFill
  jacobian[at + evaporation] = value * byE
  jacobian[at + carryOff] = value * byD
}

/** What wanders does not wander off for ever: no wider than an sd of `most`. */
function widen(cov: Float64Array, i: number, sd: number, time: number, most: number): void {
  const at = i * size + i
  if (cov[at]! < most ** 2) cov[at] = Math.min(most ** 2, cov[at]! + sd ** 2 * time)
}

/**
 * Takes the losses of some working days out again that turn out to have been idle: what was reckoned as work less what goes on at rest.
 */
export function takeBack(belief: Belief, workDays: number, idle: ShopPriors['idle']): void {
  const { mean } = belief
  const days = Math.min(workDays, 20)
  const water = Math.exp(mean[evaporation]!) * days * (1 - idle.evaporation)
  const fluid = Math.exp(mean[carryOff]!) * days * (1 - idle.carryOff)
  const before = Math.max(mean[fill]!, 0.02)
  const shrink = (before + fluid) / (before + fluid + water)
  blur(belief, fill, (0.5 * (water + fluid)) ** 2)
  blur(belief, strength, (0.5 * (1 - shrink) * mean[strength]!) ** 2)
  mean[fill] = Math.max(before, Math.min(1.3, before + water + fluid))
  for (const i of [strength, hardness, chloride]) mean[i]! *= shrink
}
