import { timeOn } from '../simulate/shop-days.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import { openFrom } from '../simulate/shop-run.ts'
import { late } from './roster.ts'

/** The last shift's note of the last evening. */
const lastNote =
  'Puddle under Mill 5, a seam of the tank weeps: pan put under it, not topped up. Turning centre 2 had plain water ' +
  'all week, the mixer was taken. Bar store locked again, nobody could get at the band saw.'

const remarks = [
  'Chips everywhere, conveyor of Turning centre 1 stuck once.',
  'Wringer for aluminium swarf runs again.',
  'Hose of the mixing station drips, washer ordered.',
  'Drum of Grey semi 25 nearly empty.',
  'Doors of Mill 7 stood open over lunch, mist in the hall.',
  'Quiet shift.',
] as const

/** What the late shift leaves for the early one: some evenings, and the last. */
export function planHandovers(shop: ShopRun): void {
  const random = shop.randomOf('handovers')
  for (let day = 3; day < shop.last - 1; day++) {
    if (shop.calendar.open[day] === true && random.chance(0.35)) note(shop, day, () => noteOf(shop, day))
  }
  note(shop, openFrom(shop, shop.last - 1), () => lastNote)

  function noteOf({ poured }: ShopRun, day: number): string {
    const names = [...new Set(poured.get(day) ?? [])]
    const done = names.length > 0 ? `Topped up: ${names.join(', ')}. ` : ''
    return `${done}${random.pick(remarks)}`
  }
}

function note(shop: ShopRun, day: number, text: () => string): void {
  const ms = timeOn(shop.days, day, '21:40')
  shop.agenda.put(ms, () => {
    shop.journal.write({ kind: 'handover', about: { kind: 'shop' }, atMs: ms, by: late, fields: { text: text() } })
  })
}
