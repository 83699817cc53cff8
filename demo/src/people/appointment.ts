import { timeOn } from '../simulate/shop-days.ts'
import { openFrom, type ShopRun } from '../simulate/shop-run.ts'

/** Something happens at a time of day, on the first day from `day` on on which the shop works; nothing after the last. */
export function arrange(shop: ShopRun, day: number, time: string, happen: (ms: number) => void): void {
  if (day > shop.last) return
  const ms = timeOn(shop.days, openFrom(shop, day), time)
  shop.agenda.put(ms, () => happen(ms))
}

/** The same, counted in days before the last. */
export function arrangeBefore(shop: ShopRun, daysLeft: number, time: string, happen: (ms: number) => void): void {
  arrange(shop, shop.last - daysLeft, time, happen)
}
