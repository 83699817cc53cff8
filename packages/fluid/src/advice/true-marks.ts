import type { Figure, Litres } from '../quantities.ts'
import type { RecipeBench } from './bench.ts'

/** A mark that nobody measured serves once it is known to this share of itself. */
const goodEnoughMark = 0.15

/**
 * The marks of a sump in litres as it truly holds them: a plate is often off, and sludge eats volume, while what is poured is
 * measured. All marks keep their shares of the full mark. Without a plate the mark learnt serves once it is known to 15 %.
 *
 * The middle of the mark is taken, √(low90 · high90): its logarithm is what is believed, and the volume is reckoned the same way.
 *
 * @param mark litres at the full mark, as learnt; null where nothing was learnt
 */
export function trueMarks(bench: RecipeBench, mark: Figure | null): RecipeBench {
  if (mark === null || (bench.fillVolume === null && mark.sd > goodEnoughMark * mark.mean)) return bench
  const fillVolume = middleOf(mark)
  const scale = fillVolume / (bench.fillVolume ?? fillVolume)
  const capacity = bench.capacity === null ? null : Math.max(bench.capacity * scale, fillVolume)
  const minVolume = bench.minVolume === null ? null : Math.min(bench.minVolume * scale, fillVolume)
  return { ...bench, fillVolume, capacity, minVolume }
}

/** Litres seen on a sump's own measure as it truly holds them. */
export function trueLitres(seen: Litres, bench: RecipeBench, mark: Figure | null): Litres {
  const { fillVolume } = trueMarks(bench, mark)
  return bench.fillVolume === null || fillVolume === null ? seen : (seen * fillVolume) / bench.fillVolume
}

const middleOf = ({ low90, high90, mean }: Figure) => (low90 > 0 ? Math.sqrt(low90 * high90) : mean)
