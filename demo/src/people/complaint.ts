import type { ShopRun } from '../simulate/shop-run.ts'
import { arrangeBefore } from './appointment.ts'
import { early, keeper } from './roster.ts'

const sump = 'lathe12'

/** Somebody's forearms itched; it stayed on the list until it was said what was done. No names, no diagnosis. */
export function planComplaint(shop: ShopRun): void {
  arrangeBefore(shop, 44, '10:20', (ms) => {
    const entry = shop.journal.write({
      kind: 'observation',
      sump,
      atMs: ms,
      by: early,
      note: 'Forearms',
      fields: { signs: ['skin irritation'], severity: 'slight' },
    })
    arrangeBefore(shop, 40, '11:00', (laterMs) => {
      const answer = 'Occupational health has seen it; gloves and barrier cream as it says, hardness and pH read again'
      shop.journal.write({ kind: 'verdict', sump, atMs: laterMs, by: keeper, fields: { entries: [entry], answer } })
    })
  })
}
