import type { Litres } from '../quantities.ts'
import { requireRange } from '../require.ts'
import type { Standing } from './mix.ts'
import type { SumpToPour } from './recipe.ts'

/** A level this far above the brim is a slip of the eye; further above it is a slip of the pen. */
export const brimTolerance = 1.05

/** All the fluid of a sump's system, and the brim above it. */
export interface System extends Standing {
  brim: Litres
}

/**
 * A sump with every default filled in: what the lines hold while the pumps run is counted, the brim lies a quarter above the
 * mark where nobody said.
 *
 * @throws {RangeError} a quantity outside the range its field gives, a level more than 5 % above the brim
 */
export function systemOf(sump: SumpToPour): System {
  const { concentration, concentrationSd = 0, volumeSd = 0, hardness = null, holdUp = 0, fillVolume } = sump
  const { capacity: brim = 1.25 * fillVolume } = sump
  requireRange('concentration', concentration, { min: 0, max: 100 })
  requireRange('concentrationSd', concentrationSd, { min: 0 })
  requireRange('volumeSd', volumeSd, { min: 0 })
  requireRange('fillVolume', fillVolume, { above: 0, max: brim })
  if (hardness !== null) requireRange('hardness', hardness, { min: 0 })
  requireRange('holdUp', holdUp, { min: 0 })
  requireRange('volume', sump.volume, { min: 0 })
  const volume = sump.volume + (sump.pumps === 'running' ? holdUp : 0)
  requireRange('volume', volume, { max: brimTolerance * brim })
  return { volume, concentration, volumeSd, concentrationSd, hardness, brim }
}
