import type { Pour } from '../pour.ts'
import type { ShopEstimate, SumpState } from '../shop-estimate.ts'
import { workBetween } from '../work-calendar.ts'
import { pourOf } from '../written-pour.ts'
import type { Habits } from './stories.ts'
import { forgottenPour } from './visits.ts'

/** What is usually done at a sump, from what was done before. */
export function habitsOf(
  sump: SumpState,
  { calendar, priors, visits }: ShopEstimate,
  forgotten = forgottenPour(sump, visits),
): Habits {
  const { spec, usualStrength, usualWater, plate, lastReadingAt } = sump
  const target = spec.target ?? 7
  const water = usualWater ?? { hardness: 150, chloride: 40 }
  const usual: Pour = pourOf({ strength: usualStrength ?? 0.7 * target, water })
  return {
    usual,
    target,
    brim: spec.capacity === null ? 1.2 : Math.max(1.03, spec.capacity / plate),
    forgotten,
    workSince: lastReadingAt === null ? 3 : workBetween(calendar, lastReadingAt, sump.at, sump.idles),
    idle: priors.idle,
    plainWater: { ...usual, strength: 0, strengthSd: 0.3, mixed: false },
  }
}
