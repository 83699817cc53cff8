import { type WasteId, wasteContainers } from '../shop/waste.ts'
import { dayHourOf, timeOn } from '../simulate/shop-days.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import { openFrom } from '../simulate/shop-run.ts'
import { toStep } from '../simulate/steps.ts'
import { arrange } from './appointment.ts'
import { early, keeper } from './roster.ts'

interface Wasted {
  into: WasteId
  litres: number
  /** The sump it came from. */
  from: string
}

/** Waste goes into its container, and is written down. */
export function storeWaste(shop: ShopRun, ms: number, by: string, { into, litres, from }: Wasted): void {
  shop.waste.set(into, (shop.waste.get(into) ?? 0) + litres)
  shop.journal.write({
    kind: 'stored',
    about: { kind: 'waste', id: into },
    atMs: ms,
    by,
    typed: { litres: `${litres} L` },
    fields: { stream: containerOf(into).stream, litres, from },
  })
}

/** Every second Friday the paper filter of the central system and the grinder's tray are emptied. */
export function planSludge(shop: ShopRun): void {
  const random = shop.randomOf('sludge')
  for (let day = 11; day < shop.last; day += 14) {
    for (const from of ['central', 'grinder']) {
      const litres = toStep(random.between(15, 35), 5)
      arrange(shop, day, '12:40', (ms) => storeWaste(shop, ms, early, { into: 'sludge', litres, from }))
    }
  }
}

/** The carrier comes for the emulsion every nine weeks; for oil and sludge in between, when it is worth the way or their time is up. */
export function planPickups(shop: ShopRun): void {
  const visit = (week: number, time: string, id: WasteId) => {
    const day = openFrom(shop, 7 * week)
    const ms = timeOn(shop.days, day, time)
    shop.agenda.put(ms, () => pickUp(shop, ms, id))
  }
  for (let week = 6; 7 * week < shop.last - 4; week += 9) visit(week, '11:20', 'emulsion')
  for (const week of [12, 29]) visit(week, '11:35', 'oil')
  visit(47, '11:35', 'sludge')
}

function pickUp(shop: ShopRun, ms: number, id: WasteId): void {
  const litres = shop.waste.get(id) ?? 0
  if (litres <= 0) return
  const { day } = dayHourOf(shop.days, ms)
  shop.waste.set(id, 0)
  shop.pickups += 1
  const document = `N-${shop.days.dates[day]!.slice(0, 4)}-${String(shop.pickups).padStart(3, '0')}`
  const { stream, code, density } = containerOf(id)
  // The skip is weighed by the carrier, whose paper had not come when this was written.
  const fields =
    id === 'sludge'
      ? { stream, code, litres, kilograms: toStep(litres * density, 10) }
      : { stream, code, litres, document }
  shop.journal.write({ kind: 'pickup', about: { kind: 'waste', id }, atMs: ms, by: keeper, fields })
}

const containerOf = (id: WasteId) => wasteContainers.find((one) => one.id === id)!
