import { timeOn } from '../simulate/shop-days.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import { charge, empty } from './charge.ts'
import { early } from './roster.ts'
import { lotOf } from './stock.ts'
import { beginsOn } from './story.ts'

/** The book begins with fresh charges, a few machines a day. */
export function planStart(shop: ShopRun): void {
  shop.sumps.forEach((run, i) => {
    if (!run.plan.habits.chargedAtStart) return
    const day = beginsOn(shop, run.plan.document.id)
    const ms = timeOn(shop.days, day, '05:05') - (i % 3) * 300_000
    shop.agenda.put(ms, () => {
      empty(shop, run, ms)
      charge(shop, run, ms, early, lotOf(run.plan.document.fluid, 0))
    })
  })
}
