import type { OnOrder } from '@sumpbook/fluid'
import type { FluidRecords } from './fluid-records.ts'

/** An order that is still awaited, with what of it is. */
export interface AwaitedOrder extends OnOrder {
  entry: string
  orderedOn: number
}

/** Deliveries answer the orders before them, oldest first, by their litres; a rest of a twentieth is a rounding of drums. */
export function awaited(
  { orders, receipts }: Pick<FluidRecords, 'orders' | 'receipts'>,
  leadDays: number,
): AwaitedOrder[] {
  const open = orders.map((order) => ({ ...order, left: order.litres }))
  for (const receipt of receipts) {
    let litres = receipt.litres
    for (const order of open) {
      if (order.at > receipt.at || order.left === 0) continue
      const answered = Math.min(order.left, litres)
      litres -= answered
      order.left = order.left - answered <= 0.05 * order.litres ? 0 : order.left - answered
    }
  }
  return open
    .filter(({ left }) => left > 0)
    .map(({ entry, on, left, expectedOn }) => ({
      entry,
      orderedOn: on,
      litres: left,
      expectedOn: expectedOn ?? on + Math.ceil(leadDays),
    }))
}
