import { fluids } from '../shop/fluids.ts'
import { instantText } from '../simulate/shop-days.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import { arrange } from './appointment.ts'
import { early, keeper } from './roster.ts'

/** Litres. */
const drum = 200
/** Drums of a delivery. */
const delivered = 2
const letters: Readonly<Record<string, string>> = { 'blue-40': 'B', 'grey-25': 'G', 'clear-10': 'C', 'oil-22': 'O' }

/** The lot of a fluid's so-many-th delivery. */
export const lotOf = (fluid: string, delivery: number): string => `${letters[fluid] ?? 'X'}-${411 + 7 * delivery}`

interface Shelf {
  /** Full drums by lot, oldest first. */
  lots: { lot: string; drums: number }[]
  opened: number
  deliveries: number
}

/** Fridays: drums that were opened are written off, and new ones come before the last is opened. */
export function planStock(shop: ShopRun): void {
  const shelves = new Map(
    fluids.map(({ id }) => [id, { lots: [{ lot: lotOf(id, 0), drums: 3 }], opened: 0, deliveries: 0 }]),
  )
  for (const [fluid, shelf] of shelves) arrange(shop, 2, '09:00', (ms) => begin(shop, ms, fluid, shelf))
  shop.days.weekdays.forEach((weekday, day) => {
    if (weekday !== 5 || shop.calendar.open[day] !== true || day <= 2) return
    arrange(shop, day, '13:30', (ms) => {
      for (const [fluid, shelf] of shelves) count(shop, ms, day, fluid, shelf)
    })
  })
}

/** Drums opened since the last count; a drum is opened once the one before is empty. */
function count(shop: ShopRun, ms: number, day: number, fluid: string, shelf: Shelf): void {
  const opened = Math.ceil((shop.used.get(fluid) ?? 0) / drum)
  for (let now = Math.min(opened - shelf.opened, fullOf(shelf)); now > 0; now--) issue(shop, ms, fluid, shelf)
  if (fullOf(shelf) >= 2) return
  order(shop, ms + 600_000, fluid)
  arrange(shop, day + 5, '10:15', (laterMs) => deliver(shop, laterMs, fluid, shelf))
}

/** What is ordered in the afternoon comes the Wednesday after, or the Thursday. */
function order(shop: ShopRun, ms: number, fluid: string): void {
  const fields = {
    fluid,
    litres: delivered * drum,
    expectedOn: instantText(shop.days, ms + 5 * 86_400_000).slice(0, 10),
  }
  shop.journal.write({ kind: 'order', about: { kind: 'stock', id: fluid }, atMs: ms, by: keeper, fields })
}

const fullOf = ({ lots }: Shelf) => lots.reduce((sum, { drums }) => sum + drums, 0)

/** The oldest drum first. */
function issue(shop: ShopRun, ms: number, fluid: string, shelf: Shelf): void {
  const oldest = shelf.lots.find(({ drums }) => drums > 0)!
  shelf.opened += 1
  oldest.drums -= 1
  const fields = { fluid, lot: oldest.lot, litres: drum }
  shop.journal.write({ kind: 'issue', about: { kind: 'stock', id: fluid }, atMs: ms, by: early, fields })
}

function begin(shop: ShopRun, ms: number, fluid: string, shelf: Shelf): void {
  receive(shop, ms, { fluid, lot: lotOf(fluid, 0), litres: fullOf(shelf) * drum }, 'Counted when the book was begun')
}

function deliver(shop: ShopRun, ms: number, fluid: string, shelf: Shelf): void {
  shelf.deliveries += 1
  shelf.lots.push({ lot: lotOf(fluid, shelf.deliveries), drums: delivered })
  receive(shop, ms, { fluid, lot: lotOf(fluid, shelf.deliveries), litres: delivered * drum, ...onArrival(shop, ms) })
}

/** A drum is some five weeks old when it comes, and its seal is whole. */
const onArrival = (shop: ShopRun, ms: number) => ({
  made: instantText(shop.days, ms - 37 * 86_400_000).slice(0, 10),
  seal: 'whole' as const,
})

interface Receipt {
  fluid: string
  lot: string
  litres: number
  made?: string
  seal?: 'whole'
}

function receive(shop: ShopRun, ms: number, receipt: Receipt, note?: string): void {
  const about = { kind: 'stock', id: receipt.fluid }
  const noted = note === undefined ? {} : { note }
  shop.journal.write({ kind: 'receipt', about, atMs: ms, by: keeper, ...noted, fields: { ...receipt } })
}
