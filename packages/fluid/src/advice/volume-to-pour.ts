import { interval90 } from '../interval90.ts'
import type { Figure } from '../quantities.ts'
import type { RecipeBench } from './bench.ts'

/** A volume known worse than this share of itself is no ground for a pour: one look at the level says more (common practice). */
const goodEnoughVolume = 0.1

/**
 * The volume of a sump with the doubt that it has beside the mark's. A plate that is off moves both, and how full the sump is, or what
 * is missing to the mark, takes only the level's doubt:
 *
 *     sd² = volume² · (sdV² / V² − sdM² / M²)
 *
 * @param mark litres at the full mark, as learnt; null where nothing was learnt
 */
export function volumeBesideMark(volume: Figure, mark: Figure | null): Figure {
  const share = (figure: Figure) => (figure.mean > 0 ? figure.sd / figure.mean : 0)
  const sd = volume.mean * Math.sqrt(Math.max(0, share(volume) ** 2 - (mark === null ? 0 : share(mark) ** 2)))
  return { mean: volume.mean, sd, ...interval90(volume.mean, sd, 0) }
}

/**
 * The same as a pour needs it: null where it is known worse than to 10 % that way, for then the level is read first. Below the pumps'
 * suction it is never too vague: level comes first there anyway.
 */
export function volumeToPour(
  volume: Figure,
  mark: Figure | null,
  { minVolume }: Pick<RecipeBench, 'minVolume'>,
): Figure | null {
  const beside = volumeBesideMark(volume, mark)
  const isLow = minVolume !== null && volume.mean < minVolume
  return beside.sd > goodEnoughVolume * volume.mean && !isLow ? null : beside
}
