import { instantOf, stepsPerDay } from './clock.ts'
import type { MissingRecord } from './labels.ts'
import type { SimShop } from './shop-state.ts'
import { type SimSump, seenVolume } from './sump.ts'
import { concentrationOf, type Pour, pour, takeFrom, volumeOf } from './tank.ts'
import { round } from './traits.ts'

/** The water of a place in the shop's list, as it is on that day. */
export function waterOn(shop: SimShop, place: number, day: number): { hardness: number; salts: number } {
  const { waters, salts, tapSwing } = shop.equipment
  const swing = 1 + tapSwing * Math.sin((2 * Math.PI * day) / 365 + shop.seasonPhase)
  return { hardness: waters[place]!.hardness * swing, salts: salts[place]! * swing }
}

const chooseStrength = (sump: SimSump, shop: SimShop, missing: number): number => {
  const { low, target, high } = shop.equipment.fluids[sump.product]!.limits.concentration
  if (sump.traits.fixedStrength !== null) {
    const shown = sump.lastShown ?? target
    return shown > high ? 1 : shown < low ? sump.traits.fixedStrength + 3 : sump.traits.fixedStrength
  }
  const shown = sump.lastShown ?? target
  const whole = sump.traits.plateVolume
  const wanted = (target * whole - shown * (whole - missing)) / Math.max(missing, 1)
  return round(Math.min(Math.max(wanted, 0), 12), 0.5)
}

/** Tops a sump up to its mark if it looks low enough, and writes it down if nobody forgets. */
export function topUp(sump: SimSump, shop: SimShop, step: number, minute: number): void {
  const { traits, chance, tank } = sump
  const plate = traits.plateVolume
  const seen = seenVolume(sump, step)
  if (seen > plate * traits.topsUpUnder) return
  const missing = plate - seen
  const strength = chooseStrength(sump, shop, missing)
  const day = Math.floor(step / stepsPerDay)
  const poured: Pour = {
    volume: (Math.max(missing, 1) * traits.markVolume * chance.factor(0.03)) / plate,
    strength: Math.min(25, strength * shop.equipment.mixerBias * chance.factor(0.05)),
    product: sump.product,
    ...waterOn(shop, shop.equipment.topUpWater, day),
  }
  const before = volumeOf(tank)
  pour(tank, poured)
  if (chance.happens(0.012)) {
    forget(sump, shop, step, minute, strength < 1 ? 'unlogged-water' : 'unlogged-addition', poured.volume, before)
    return
  }
  // What is forgotten came from another hose, so that no meter tells of it later.
  sump.meterCount += poured.volume * chance.factor(0.02)
  const water = shop.equipment.waters[shop.equipment.topUpWater]!.id
  const amount =
    traits.filling === 'to-mark'
      ? { toMark: true }
      : traits.filling === 'meter'
        ? { meter: { id: `m${sump.id}`, count: round(sump.meterCount, 1) } }
        : { volume: Math.max(1, round(poured.volume * chance.factor(0.04), poured.volume > 20 ? 5 : 1)) }
  shop.journal.write(step, minute, { kind: 'addition', sump: sump.id, ...amount, strength, water })
}

/** Keeps for the label what nobody wrote. */
export function forget(
  sump: SimSump,
  shop: SimShop,
  step: number,
  minute: number,
  kind: MissingRecord['kind'],
  volume: number,
  before: number,
): void {
  const atMs = instantOf(shop.clock, step) + minute * 60_000
  shop.journal.labels.missing.push({ kind, sump: sump.id, atMs, volume, share: volume / before })
}

/** Things somebody does between the rounds and tells nobody: about four for ten sumps in a half year. */
export function actUnseen(sump: SimSump, shop: SimShop, step: number): void {
  const { chance, tank, traits } = sump
  if (!chance.happens(0.4 / 182)) return
  const before = volumeOf(tank)
  const room = Math.max(traits.markVolume * 1.15 - before, 0)
  const day = Math.floor(step / stepsPerDay)
  const water = waterOn(shop, 0, day)
  const kind = chance.pick([
    'unlogged-water',
    'unlogged-addition',
    'unlogged-addition',
    'unlogged-concentrate',
    'unlogged-drawoff',
  ] as const)
  if (kind === 'unlogged-drawoff') {
    const volume = before * chance.between(0.1, 0.3)
    takeFrom(tank, volume)
    forget(sump, shop, step, 5, kind, volume, before)
    return
  }
  const strength = kind === 'unlogged-water' ? 0 : kind === 'unlogged-concentrate' ? 100 : chance.between(4, 10)
  const volume = Math.min(room, before * (strength === 100 ? chance.between(0.01, 0.03) : chance.between(0.1, 0.28)))
  if (volume < before * 0.008) return
  pour(tank, { volume, strength, product: sump.product, ...water })
  forget(sump, shop, step, 5, kind, volume, before)
}

/** Neat concentrate into a lean full sump, water into a rich one that has room made for it. */
export function correct(sump: SimSump, shop: SimShop, step: number, minute: number): void {
  const { chance, tank, traits } = sump
  const { low, target, high } = shop.equipment.fluids[sump.product]!.limits.concentration
  const shown = sump.lastShown
  if (shown === null || seenVolume(sump, step) < traits.plateVolume * traits.topsUpUnder || !chance.happens(0.5)) return
  const day = Math.floor(step / stepsPerDay)
  const water = waterOn(shop, shop.equipment.topUpWater, day)
  if (shown < low) {
    const concentrate = Math.max(0.5, round((traits.plateVolume * (target - shown)) / 100, 0.5))
    pour(tank, { volume: concentrate * chance.factor(0.05), strength: 100, product: sump.product, ...water })
    shop.journal.write(step, minute, { kind: 'addition', sump: sump.id, concentrate })
  } else if (shown > high && concentrationOf(tank) > target) {
    const volume = Math.max(5, round(traits.plateVolume * 0.12, 5))
    takeFrom(tank, volume * chance.factor(0.05))
    shop.journal.write(step, minute, { kind: 'drawoff', sump: sump.id, volume })
    pour(tank, { volume: volume * chance.factor(0.04), strength: 0, product: sump.product, ...water })
    const id = shop.equipment.waters[shop.equipment.topUpWater]!.id
    const entry = { kind: 'addition', sump: sump.id, volume, strength: 0, water: id }
    shop.journal.write(step, minute, entry)
  }
}
