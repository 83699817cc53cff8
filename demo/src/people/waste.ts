import { dayHourOf, timeOn } from '../simulate/shop-days.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import { openFrom } from '../simulate/shop-run.ts'

const stream = 'Used emulsion'

/** Waste goes into the tank, and is written down. */
export function storeWaste(shop: ShopRun, ms: number, by: string, litres: number): void {
  shop.waste.litres += litres
  shop.journal.write({
    kind: 'stored',
    about: { kind: 'waste', id: 'emulsion' },
    atMs: ms,
    by,
    typed: { litres: `${litres} L` },
    fields: { stream, litres },
  })
}

/** The carrier comes every nine weeks. */
export function planPickups(shop: ShopRun): void {
  for (let week = 6; 7 * week < shop.last - 4; week += 9) {
    const day = openFrom(shop, 7 * week)
    const ms = timeOn(shop.days, day, '11:20')
    shop.agenda.put(ms, () => pickUp(shop, ms))
  }
}

/** The code is the one this invented shop chose from the EU List of Waste for its halogen-free emulsions. */
function pickUp(shop: ShopRun, ms: number): void {
  const { litres } = shop.waste
  if (litres <= 0) return
  const { day } = dayHourOf(shop.days, ms)
  shop.waste.litres = 0
  shop.waste.pickups += 1
  const document = `N-${shop.days.dates[day]!.slice(0, 4)}-${String(shop.waste.pickups).padStart(3, '0')}`
  shop.journal.write({
    kind: 'pickup',
    about: { kind: 'waste', id: 'emulsion' },
    atMs: ms,
    by: 'p3',
    fields: { stream, code: '12 01 09*', litres, document },
  })
}
