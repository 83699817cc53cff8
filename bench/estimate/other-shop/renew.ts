import { drawOff, pour } from './fill.ts'
import { type Moment, msOf, type Place, type Scene, shortOf } from './scene.ts'
import { toStep } from './stores.ts'

/** Empties a sump but for what stays in its corners, and charges it with the product now chosen for it. */
export function renew(place: Place, scene: Scene, moment: Moment, product: number): void {
  const { chance, machine, inBook } = place
  const { products, mixer } = scene.stores
  const heel = machine.mark * chance.between(0.05, 0.15)
  drawOff(place, place.contents.litres - heel)
  place.sludge = 0
  place.product = product
  inBook.fluid = products[product]!.id
  const litres = shortOf(place)
  const strength = products[product]!.target
  pour(place, scene, moment, litres, strength * mixer * chance.factor(0.02), 'tap')
  place.oil *= heel / (heel + litres)
  place.lastSeen = null
  scene.notebook.write(msOf(scene, moment), {
    kind: 'charge',
    sump: machine.id,
    volume: toStep(litres * chance.factor(0.03), litres > 1000 ? 20 : 5),
    strength,
    water: 'tap',
    fluid: inBook.fluid,
    ...(chance.happens(0.75) ? { heldBack: toStep(heel * chance.factor(0.2), 1) } : {}),
  })
}
