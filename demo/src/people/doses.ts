import { additives } from '../shop/additives.ts'
import { type ShopRun, sumpOf } from '../simulate/shop-run.ts'
import { toStep } from '../simulate/steps.ts'
import { advance } from '../simulate/sump-run.ts'
import { arrangeBefore } from './appointment.ts'
import { keeper } from './roster.ts'

/** One dose: where, what, how many days before the last, mL per litre of the mark. */
const doses = [
  { sump: 'mill7', additive: 'defoamer', daysLeft: 131, perLitre: 0.1, reason: 'Foam on soft water' },
  { sump: 'mill7', additive: 'defoamer', daysLeft: 24, perLitre: 0.1, reason: 'Foam on soft water' },
  {
    sump: 'lathe12',
    additive: 'preservative',
    daysLeft: 70,
    perLitre: 1.5,
    reason: 'Slide poor, strength and pH were right',
  },
] as const

/** What went in by its label, each dose within it. */
export function planDoses(shop: ShopRun): void {
  for (const { sump, additive: id, daysLeft, perLitre, reason } of doses) {
    arrangeBefore(shop, daysLeft, '14:20', (ms) => {
      const run = sumpOf(shop, sump)
      const { name, label, kind } = additives.find((one) => one.id === id)!
      advance(run, shop, ms)
      if (kind === 'biocide') run.truth.bacteria = Math.max(2.2, run.truth.bacteria - 2)
      const litres = toStep((perLitre * run.plan.document.fillVolume) / 1000, 0.005)
      shop.journal.write({
        kind: 'addition',
        sump,
        atMs: ms,
        by: keeper,
        typed: { litres: `${Math.round(1000 * litres)} mL` },
        fields: { additive: { id, name, litres, reason, label } },
      })
    })
  }
}
