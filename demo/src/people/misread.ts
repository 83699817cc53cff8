import type { ShopRun } from '../simulate/shop-run.ts'
import { toStep, typedNumber } from '../simulate/steps.ts'

/** A reading that was written down wrong: from so many days before the last, the next one of that sump. */
interface Slip {
  sump: string
  daysLeft: number
  wrong(brix: number): number
  /** Noticed: the entry is withdrawn and written again. */
  withdrawn: boolean
}

const slips: readonly Slip[] = [
  { sump: 'mill5', daysLeft: 72, wrong: (brix) => toStep(brix * 10, 0.1), withdrawn: true },
  { sump: 'tc1', daysLeft: 47, wrong: (brix) => toStep(brix / 2, 0.2), withdrawn: false },
]

/** What is written for a reading: as read, or by a slip. */
export function brixWritten(
  shop: ShopRun,
  sump: string,
  day: number,
  brix: number,
): { brix: number; slip: Slip | null } {
  const slip = slips.find((one) => one.sump === sump && shop.last - day <= one.daysLeft && !shop.slipped.has(sump))
  if (slip === undefined) return { brix, slip: null }
  shop.slipped.add(sump)
  return { brix: slip.wrong(brix), slip }
}

/** Withdraws an entry and says why. */
export function withdraw(shop: ShopRun, sump: string, atMs: number, by: string, entry: string, right: number): void {
  shop.journal.write({
    kind: 'void',
    sump,
    atMs,
    by,
    fields: { entry, reason: `Decimal comma forgotten, it was ${typedNumber(right)} °Brix` },
  })
}
