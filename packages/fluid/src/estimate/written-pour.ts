import type { Pour } from './pour.ts'
import { written } from './priors.ts'

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
