import type { Pour } from './pour.ts'
import { written } from './priors.ts'
import type { ShopEstimate, SumpState } from './shop-estimate.ts'
import type { Habits } from './stories.ts'
import { forgottenPour } from './visits.ts'
import { workBetween } from './work-calendar.ts'

/** What is usually done at a sump, from what was done before. */
export function habitsOf(sump: SumpState, { calendar, priors, visits }: ShopEstimate): Habits {
  const { spec, usualStrength, usualWater, plate, lastReadingAt } = sump
  const target = spec.target ?? 7
  const water = usualWater ?? { hardness: 150, chloride: 40 }
  const usual: Pour = pourOf({ strength: usualStrength ?? 0.7 * target, water })
  return {
    usual,
    target,
    brim: spec.capacity === null ? 1.2 : Math.max(1.03, spec.capacity / plate),
    forgotten: forgottenPour(sump, visits),
    workSince: lastReadingAt === null ? 3 : workBetween(calendar, lastReadingAt, sump.at, sump.idles),
    idle: priors.idle,
    plainWater: { ...usual, strength: 0, strengthSd: 0.3, mixed: false },
  }
}

/** A pour as it is written down, with the doubt of it. */
export function pourOf({
  strength,
  water,
}: {
  strength: number
  water: { hardness: number | null; chloride: number | null }
}): Pour {
  const share = 1 - strength / 100
  const hardness = (water.hardness ?? 150) * share
  const chloride = (water.chloride ?? 40) * share
  return {
    strength,
    strengthSd: written.strength * strength,
    mixed: strength < 100,
    hardness,
    hardnessSd: water.hardness === null ? 100 * share : written.water * hardness + 1,
    chloride,
    chlorideSd: water.chloride === null ? 40 * share : written.water * chloride + 1,
  }
}
