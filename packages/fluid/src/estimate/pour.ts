import type { Belief } from '../filter/index.ts'
import { blur, renew, shake, spread } from '../filter/index.ts'
import { holdToBounds } from './bounds.ts'
import { start, written } from './priors.ts'
import {
  bias,
  carryOff,
  chloride,
  evaporation,
  fill,
  full,
  gauge,
  hardness,
  moving,
  pours,
  scale,
  size,
  strength,
  titration,
} from './state.ts'

/** What is poured, as far as it is known. */
export interface Pour {
  /** Percent of the mix, as written. */
  strength: number
  strengthSd: number
  /** Whether it came through the shop's mixing, whose common error it then bears; concentrate and other sumps' fluid do not. */
  mixed: boolean
  /** mg/L of the mix. */
  hardness: number
  hardnessSd: number
  chloride: number
  chlorideSd: number
}

const jacobian = new Float64Array(moving * size)
const direction = new Float64Array(moving)
const next = new Float64Array(moving)

/**
 * A measured pour: a share `a` of the mark comes in,
 *
 *     r′ = r + a,  C′ = (C r + x a) / (r + a)
 *
 * and likewise what is dissolved. The share is the litres over the true mark, which is known only as well as the plate's; the
 * strength bears what all pours of the shop's mixer have in common (`pours`).
 *
 * @param share litres over the plate's mark, times the plate over the true mark; of either sign: a negative one takes out
 * @param shareSd of the litres alone
 * @param byPlate whether the share was reckoned from litres; without it, it is a share of the true mark itself
 */
export function pourShare(belief: Belief, share: number, shareSd: number, pour: Pour, byPlate = true): void {
  const { mean } = belief
  const before = Math.max(mean[fill]!, 0.02)
  const a = Math.max(share, 0.02 - before)
  const after = before + a
  const x = trueStrength(belief, pour)
  jacobian.fill(0)
  direction.fill(0)
  jacobian[fill * size + fill] = 1
  jacobian[fill * size + scale] = -a
  direction[fill] = 1
  mixIn(belief, strength, { x, a, before, after })
  mixIn(belief, hardness, { x: pour.hardness, a, before, after })
  mixIn(belief, chloride, { x: pour.chloride, a, before, after })
  if (pour.mixed) jacobian[strength * size + pours] = (x * a) / after
  if (!byPlate) for (let i = 0; i < moving; i++) jacobian[i * size + scale] = 0
  finish(belief, after, a / after, pour)
  shake(belief, moving, direction, shareSd ** 2)
}

const trueStrength = ({ mean }: Belief, pour: Pour) =>
  Math.min(100, pour.mixed ? pour.strength * Math.exp(mean[pours]!) : pour.strength)

function mixIn(
  { mean }: Belief,
  i: number,
  { x, a, before, after }: { x: number; a: number; before: number; after: number },
): void {
  const held = mean[i]!
  jacobian[i * size + i] = before / after
  jacobian[i * size + fill] = ((held - x) * a) / after ** 2
  const byShare = ((x - held) * before) / after ** 2
  jacobian[i * size + scale] = -a * byShare
  direction[i] = byShare
  next[i] = (held * before + x * a) / after
}

/**
 * A fill up to the mark: whatever was missing was poured,
 *
 *     r′ = full − g,  C′ = (C r + x (r′ − r)) / r′
 *
 * where the eye that fills is misled by what the level shows too much.
 */
export function pourUpTo(belief: Belief, levelSd: number, pour: Pour): void {
  const { mean } = belief
  const before = Math.max(mean[fill]!, 0.02)
  const level = Math.max(mean[full]! - mean[gauge]!, 0.05)
  const after = Math.max(level, before * 1.0005)
  const a = after - before
  const x = trueStrength(belief, pour)
  jacobian.fill(0)
  direction.fill(0)
  // A sump that is believed to be over its level already was not: the belief of its fill gives way to what was seen.
  direction[fill] = 1
  topUp(belief, strength, { x, before, after })
  topUp(belief, hardness, { x: pour.hardness, before, after })
  topUp(belief, chloride, { x: pour.chloride, before, after })
  for (let i = 0; i < moving; i++) {
    jacobian[i * size + full] = direction[i]!
    jacobian[i * size + gauge] = -direction[i]!
  }
  if (pour.mixed) jacobian[strength * size + pours] = (x * a) / after
  finish(belief, level, a / after, pour)
  shake(belief, moving, direction, levelSd ** 2)
}

function topUp({ mean }: Belief, i: number, { x, before, after }: { x: number; before: number; after: number }): void {
  const held = mean[i]!
  jacobian[i * size + i] = before / after
  jacobian[i * size + fill] = (held - x) / after
  direction[i] = ((x - held) * before) / after ** 2
  next[i] = (held * before + x * (after - before)) / after
}

function finish(belief: Belief, after: number, part: number, pour: Pour): void {
  spread(belief, moving, jacobian)
  next[fill] = after
  for (let i = 0; i < moving; i++) belief.mean[i] = next[i]!
  const share = Math.min(1, Math.abs(part))
  blur(belief, strength, (pour.strengthSd * share) ** 2)
  blur(belief, hardness, (pour.hardnessSd * share) ** 2)
  blur(belief, chloride, (pour.chlorideSd * share) ** 2)
  holdToBounds(belief)
}

/** Fluid taken out as it is: the mix stays what it was. */
export function takeOut(belief: Belief, share: number, shareSd: number): void {
  const { mean } = belief
  const after = Math.max(mean[fill]! - share, 0.02)
  jacobian.fill(0)
  for (let i = 0; i < moving; i++) jacobian[i * size + i] = 1
  jacobian[fill * size + scale] = mean[fill]! - after
  spread(belief, moving, jacobian)
  mean[fill] = after
  blur(belief, fill, shareSd ** 2)
}

/** What stayed of the old fluid and what was filled in. Shares of the mark. */
export interface Refill {
  heel: number
  heelSd: number
  /** Null: up to the mark. */
  share: number | null
  shareSd: number
}

/**
 * A fresh charge on top of what stayed in lines and corners. The sump is emptied to the heel, which keeps its mix, and
 * filled; what the refractometer feigned goes with the old fluid.
 */
export function chargeAnew(belief: Belief, refill: Refill, pour: Pour): void {
  const { mean, cov } = belief
  renew(belief, fill, Math.max(refill.heel, 0.001), refill.heelSd ** 2)
  if (refill.share === null) pourUpTo(belief, written.mark * 1.5, pour)
  else pourShareInto(belief, refill, pour)
  const kept = Math.min(1, refill.heel / Math.max(mean[fill]!, 0.02))
  const { biasFresh } = start
  const biasVariance = kept ** 2 * cov[bias * size + bias]! + biasFresh.sd ** 2
  renew(belief, bias, kept * mean[bias]! + (1 - kept) * biasFresh.mean, biasVariance)
  renew(belief, titration, 0, start.titrationSd ** 2)
  blur(belief, scale, 0.03 ** 2)
  blur(belief, gauge, 0.015 ** 2)
  blur(belief, evaporation, 0.1 ** 2)
  blur(belief, carryOff, 0.2 ** 2)
}

/** The heel may be next to nothing, which {@link pourShare} would not believe. */
function pourShareInto(belief: Belief, { share, shareSd }: Refill, pour: Pour): void {
  const { mean } = belief
  const floor = 0.02
  if (mean[fill]! < floor) {
    // Too little to keep a mix of its own: the fresh fluid is all there is.
    mean[strength] = pour.strength
    mean[hardness] = pour.hardness
    mean[chloride] = pour.chloride
  }
  pourShare(belief, share!, shareSd, pour)
}
