import { stepsPerDay } from './clock.ts'
import type { SimShop } from './shop-state.ts'
import type { SimSump } from './sump.ts'
import { join, pour, takeFrom, volumeOf } from './tank.ts'
import { waterOn } from './top-up.ts'
import { round } from './traits.ts'

/** Fills a sump freshly on top of what stayed in it. */
export function charge(sump: SimSump, shop: SimShop, step: number, minute: number): void {
  const { tank, traits, chance, inBook } = sump
  const heel = volumeOf(tank)
  const { fluids, mixerBias, waters } = shop.equipment
  const { target } = fluids[sump.product]!.limits.concentration
  const volume = Math.max(traits.markVolume - sump.sludge - heel, 1)
  const strength = round(target, 0.5)
  const poured = { volume, strength: strength * mixerBias * chance.factor(0.03), product: sump.product }
  pour(tank, { ...poured, ...waterOn(shop, 0, Math.floor(step / stepsPerDay)) })
  tank.oil *= heel / (heel + volume)
  const entry = shop.journal.write(step, minute, {
    kind: 'charge',
    sump: inBook.id,
    volume: round(volume * chance.factor(0.04), traits.markVolume > 1000 ? 50 : 5),
    strength,
    water: waters[0]!.id,
    fluid: fluids[sump.product]!.id,
  })
  if (chance.happens(0.6)) entry.heldBack = round(heel * chance.factor(0.25), 1)
}

/** Empties, cleans and refills; a twentieth to a seventh of the old fluid stays in lines and corners. */
export function changeOver(sump: SimSump, shop: SimShop, step: number): void {
  const { tank, chance, traits } = sump
  const waste = takeFrom(tank, volumeOf(tank) - traits.markVolume * chance.between(0.05, 0.15))
  sump.sludge = 0
  if (traits.changesFluid) sump.product = 1 - sump.product
  sump.inBook.fluid = shop.equipment.fluids[sump.product]!.id
  shop.journal.write(step, 2, { kind: 'cleanout', sump: sump.id, wasteVolume: round(volumeOf(waste), 5), rinses: 1 })
  charge(sump, shop, step, 20)
  sump.lastShown = null
}

export function skim(sump: SimSump, shop: SimShop, step: number): void {
  sump.tank.oil *= sump.chance.between(0.2, 0.5)
  shop.journal.write(step, 8, { kind: 'skim', sump: sump.id, litres: round(sump.chance.between(1, 5), 0.5) })
}

/** Good fluid that is moved from one sump to another with room for it. */
export function transfer(from: SimSump, to: SimSump, shop: SimShop, step: number): void {
  const room = to.traits.markVolume * 1.1 - volumeOf(to.tank)
  const volume = round(Math.min(room, volumeOf(from.tank) * 0.25), 5)
  if (volume < 10) return
  join(to.tank, takeFrom(from.tank, volume * from.chance.factor(0.05)))
  shop.journal.write(step, 12, { kind: 'transfer', sump: from.id, volume, to: { sump: to.id } })
}
