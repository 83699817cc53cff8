import { learn } from '../../filter/index.ts'
import type { AdditionEvent, ChargeEvent, PouredWater, ShopEvent } from '../events.ts'
import { bringTo } from '../passing.ts'
import { chargeAnew, type Pour, pourShare, pourUpTo, takeOut } from '../pour.ts'
import { written } from '../priors.ts'
import { type Branch, bestBranch, type ShopEstimate, type SumpState } from '../shop-estimate.ts'
import { chloride, fill, full, gauge, hardness, scale, size, strength } from '../state.ts'
import { pourOf } from '../written-pour.ts'

/** What an addition or a charge is poured as; a strength that nobody wrote is what is usually poured. */
function poured(sump: SumpState, strengthWritten: number | null, water: PouredWater): Pour {
  if (strengthWritten !== null) return pourOf({ strength: strengthWritten, water })
  const guess = pourOf({ strength: sump.usualStrength ?? 0.7 * (sump.spec.target ?? 7), water })
  return { ...guess, strengthSd: 2.5 }
}

/** A fresh charge in one branch. */
export function charge(branch: Branch, sump: SumpState, event: ChargeEvent): void {
  const { belief } = branch
  const { plate } = sump
  const litresToShare = 1 / (plate * Math.exp(belief.mean[scale]!))
  const used = sump.dataAt !== null
  const heel = event.heldBack === null ? (used ? 0.06 : 0.01) : event.heldBack * litresToShare
  const heelSd = event.heldBack === null ? (used ? 0.045 : 0.01) : 0.25 * heel + 0.005
  const strengthHere = event.strength ?? sump.spec.target
  const pour = poured(sump, strengthHere, event.water)
  const old = belief.mean[strength]!
  // A charge of just what the plate says repeats the plate and measures nothing.
  const isPlate = event.volume !== null && Math.abs(event.volume + (event.heldBack ?? 0) - plate) < 0.015 * plate
  const measured = event.volume === null || event.volume <= 0 || isPlate ? null : event.volume
  const share = measured === null ? null : measured * litresToShare
  chargeAnew(belief, { heel: Math.min(heel, 0.6), heelSd, share, shareSd: written.volume * (share ?? 0) }, pour)
  if (share !== null) fullNow(branch, 0.07)
  const heelConcentrate = Math.min(heel, 0.6) * old
  const fresh = Math.max(0, belief.mean[fill]! - heel) * pour.strength
  branch.fluids = mixFluids(branch.fluids, heelConcentrate, event.fluid, fresh)
}

/** After a charge or a measured top-up a sump stands at about its mark. */
function fullNow({ belief }: Branch, sd: number): void {
  const { mean } = belief
  byFull.fill(0)
  byFull[fill] = 1
  byFull[full] = -1
  byFull[gauge] = 1
  learn(belief, byFull, mean[full]! - mean[gauge]! - mean[fill]!, sd ** 2)
}

const byFull = new Float64Array(size)

/** A pour in one branch. */
export function add(branch: Branch, sump: SumpState, event: AdditionEvent): void {
  const { belief } = branch
  const pour = poured(sump, event.strength, event.water)
  const before = belief.mean[fill]!
  const concentrateBefore = before * belief.mean[strength]!
  if (event.amount === 'to-mark') pourUpTo(belief, written.mark, pour)
  else if (event.amount === null) pourUpTo(belief, 0.08, pour)
  else if (event.amount > 0) {
    const share = Math.min(3, event.amount / (sump.plate * Math.exp(belief.mean[scale]!)))
    pourShare(belief, share, written.volume * share + 0.002, pour)
    if (event.strength !== 100 && share > 0.02) fullNow(branch, 0.15)
  }
  const fresh = Math.max(0, belief.mean[fill]! - before) * pour.strength
  branch.fluids = mixFluids(branch.fluids, concentrateBefore, event.fluid, fresh)
}

/** Shares of the concentrate by product after some more of one; what falls under a thousandth is forgotten. */
function mixFluids(before: Branch['fluids'], held: number, fluid: string, poured: number): Branch['fluids'] {
  if (before.length === 1 && before[0]!.fluid === fluid) return before
  const whole = held + poured
  if (!(whole > 0)) return before
  const all = before.map((one) => ({ fluid: one.fluid, share: (one.share * held) / whole }))
  const same = all.find((one) => one.fluid === fluid)
  if (same === undefined) all.push({ fluid, share: poured / whole })
  else same.share += poured / whole
  const kept = all.filter(({ share }) => share > 0.001)
  const sum = kept.reduce((total, { share }) => total + share, 0)
  return kept.map((one) => ({ fluid: one.fluid, share: one.share / sum }))
}

/** Fluid taken out and away, in one branch. */
export function draw(branch: Branch, sump: SumpState, litres: number | null): void {
  const { belief } = branch
  const share = litres === null ? 0.1 : litres / (sump.plate * Math.exp(belief.mean[scale]!))
  takeOut(belief, share, litres === null ? 0.1 : 0.08 * share + 0.002)
}

/** Fluid moved from one sump to another, in every branch of both. */
export function transfer(shop: ShopEstimate, from: SumpState, event: ShopEvent & { kind: 'transfer' }): void {
  const source = bestBranch(from)
  const { mean, cov } = source.belief
  const litres = event.volume ?? 0.1 * from.plate
  const pour: Pour = {
    strength: mean[strength]!,
    strengthSd: Math.sqrt(Math.max(0, cov[strength * size + strength]!)),
    mixed: false,
    hardness: mean[hardness]!,
    hardnessSd: Math.sqrt(Math.max(0, cov[hardness * size + hardness]!)),
    chloride: mean[chloride]!,
    chlorideSd: Math.sqrt(Math.max(0, cov[chloride * size + chloride]!)),
  }
  const brought = source.fluids[0]!.fluid
  for (const branch of from.branches) draw(branch, from, litres)
  const to = event.to === null || event.to === event.sump ? undefined : shop.sumps.get(event.to)
  if (to === undefined) return
  bringTo(shop, to, event.at)
  for (const branch of to.branches) {
    const share = litres / (to.plate * Math.exp(branch.belief.mean[scale]!))
    const held = branch.belief.mean[fill]! * branch.belief.mean[strength]!
    pourShare(branch.belief, Math.min(share, 3), (event.volume === null ? 0.5 : 0.08) * share, pour)
    branch.fluids = mixFluids(branch.fluids, held, brought, share * pour.strength)
  }
  to.dataAt = event.at
}

/** What is usually poured, to guess what nobody wrote. */
export function remember(sump: SumpState, { strength: written_, water, kind }: AdditionEvent | ChargeEvent): void {
  sump.pouredSince = true
  if (written_ !== null && written_ < 60 && kind === 'addition') {
    sump.usualStrength = sump.usualStrength === null ? written_ : 0.7 * sump.usualStrength + 0.3 * written_
  }
  if (water.hardness !== null) sump.usualWater = { hardness: water.hardness, chloride: water.chloride ?? 40 }
}
