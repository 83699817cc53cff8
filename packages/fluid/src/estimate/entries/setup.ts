import { blur } from '../../filter/index.ts'
import type { SumpSpec } from '../events.ts'
import { start } from '../priors.ts'
import { guessedMark, type SumpState } from '../shop-estimate.ts'
import { scale } from '../state.ts'

/** A sump turns out to be, or becomes, other than it was. */
export function describe(sump: SumpState, spec: SumpSpec): void {
  const before = sump.plate
  const wasKnown = sump.spec.mark !== null
  sump.spec = spec
  const plate = spec.mark === null && !wasKnown ? before : guessedMark(spec)
  if (plate === before) return
  sump.plate = plate
  // The mark was measured or moved: what was learnt of it against the old figure is carried over, and doubted again.
  for (const { belief } of sump.branches) {
    belief.mean[scale]! += Math.log(before / plate)
    blur(belief, scale, (start.scaleSd / 2) ** 2)
  }
}

/** Without a mark and a brim the first litres that are seen or charged say how large a sump is. */
export function guessMark(sump: SumpState, litres: number | null): void {
  const { spec, dataAt } = sump
  if (spec.mark === null && spec.capacity === null && dataAt === null && litres !== null && litres > 0)
    sump.plate = litres
}
