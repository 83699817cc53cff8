import type { MissingRecord } from '../simulate/labels.ts'
import { mix, portion, together } from './contents.ts'
import { dayOf, type Moment, msOf, type Place, type Scene, shortOf } from './scene.ts'
import { toStep, waterOn } from './stores.ts'

/** Share of the pours that never get written down. */
export const forgottenShare = 0.025

/** Fills up a sump that is short of its mark by more than a fiftieth, or wants strength, and writes it down. */
export function fill(place: Place, scene: Scene, moment: Moment): void {
  const { chance, machine } = place
  const missing = shortOf(place) + chance.normal(0.015) * machine.mark
  if (missing < 0.02 * machine.mark) return
  const byMark = machine.habits.fillsBy === 'mark'
  // Who pours buckets sometimes has no more of them on the cart.
  const litres = missing * (byMark || chance.happens(0.75) ? 1 : chance.between(0.5, 0.9))
  pourAndWrite(place, scene, moment, litres, strengthFor(place, scene))
}

/** The strength that as a rule holds the target, a little more for a lean sump and less for a rich one, in half percents. */
function strengthFor({ machine, product, lastSeen }: Place, { stores }: Scene): number {
  const { evaporation, carryOff } = machine.nature
  const { target } = stores.products[product]!
  const rule = (target * carryOff * machine.habits.ruleOfThumb) / (0.9 * evaporation + carryOff)
  const lean = target - (lastSeen ?? target)
  const wanted = lean > 0.4 ? rule + 4 * lean : lean < -0.4 ? rule + 2 * lean : rule
  return toStep(Math.max(0, Math.min(12, wanted)), 0.5)
}

export function pourAndWrite(place: Place, scene: Scene, moment: Moment, litres: number, strength: number): void {
  const { chance, machine } = place
  const { topUpWater } = scene.stores
  pour(place, scene, moment, litres, strength * scene.stores.mixer * chance.factor(0.03), topUpWater)
  if (chance.happens(forgottenShare)) {
    leaveOut(place, scene, moment, strength === 0 ? 'unlogged-water' : 'unlogged-addition', litres)
    return
  }
  place.counter += litres
  const written = { kind: 'addition', sump: machine.id, strength, water: topUpWater }
  scene.notebook.write(msOf(scene, moment), { ...written, ...amountOf(place, litres) })
}

function amountOf({ machine, counter, chance }: Place, litres: number) {
  const { fillsBy } = machine.habits
  if (fillsBy === 'mark') return { toMark: true }
  if (fillsBy === 'meter') return { meter: { id: `water-${machine.id}`, count: toStep(counter, 0.5) } }
  return { volume: Math.max(1, toStep(litres * chance.factor(0.04), litres < 100 ? 1 : 5)) }
}

/** Pours, and tells nobody. */
export function pour(
  place: Place,
  { stores }: Scene,
  moment: Moment,
  litres: number,
  percent: number,
  water: 'tap' | 'di',
): void {
  const poured = mix(litres, percent, place.product, waterOn(stores, water, dayOf(moment)), stores.products.length)
  place.contents = together(place.contents, poured)
}

export function drawOff(place: Place, litres: number): void {
  place.contents = portion(place.contents, place.contents.litres - litres)
}

/** Labels what was done and not written; its share is of what was there before. */
export function leaveOut(
  { machine, contents }: Place,
  scene: Scene,
  moment: Moment,
  kind: MissingRecord['kind'],
  litres: number,
): void {
  const before = contents.litres + (kind === 'unlogged-drawoff' ? litres : -litres)
  const atMs = msOf(scene, moment)
  scene.notebook.leaveOut({ kind, sump: machine.id, atMs, volume: litres, share: litres / before })
}
