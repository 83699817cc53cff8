import { slides } from '../shop/equipment.ts'
import { slideClass } from '../simulate/classes.ts'
import type { Random } from '../simulate/random.ts'
import { dayHourOf, instantText, timeOn } from '../simulate/shop-days.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import type { SumpRun } from '../simulate/sump-run.ts'
import { onDuty } from './roster.ts'

/** A slide is dipped; what grew on it is read two or three days later, unless it is forgotten in the cupboard. */
export function takeSlide(shop: ShopRun, run: SumpRun, ms: number, by: string, random: Random): void {
  const sample = shop.journal.write({
    kind: 'reading',
    sump: run.plan.document.id,
    atMs: ms,
    by,
    fields: { pending: true, instrument: slides.id, method: 'dip slide' },
  })
  const bacteria = slideClass(run.truth.bacteria + random.normal(0.3))
  const readMs = readingTime(shop, ms, random)
  if (readMs === null || random.chance(0.06)) return
  shop.agenda.put(readMs, () => {
    const { day, hours } = dayHourOf(shop.days, readMs)
    shop.journal.write({
      kind: 'reading',
      sump: run.plan.document.id,
      atMs: ms,
      by: onDuty(shop, day, hours),
      recordedMs: readMs + 60_000,
      fields: {
        bacteria,
        answers: sample,
        readAt: instantText(shop.days, readMs),
        instrument: slides.id,
        method: 'dip slide',
      },
    })
  })
}

/** The afternoon of the second or third day after, if the shop works then. */
function readingTime(shop: ShopRun, ms: number, random: Random): number | null {
  const { day } = dayHourOf(shop.days, ms)
  const found = [day + 2, day + 3].find((later) => shop.calendar.open[later] === true)
  return found === undefined ? null : timeOn(shop.days, found, '13:20') + Math.round(random.between(0, 30)) * 60_000
}
