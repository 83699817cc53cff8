import type { Litres, Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** A premix to be made, what it is made in, and what the concentrate comes in. */
export interface DrumQuestion {
  /** Of the premix, 0 or more. */
  volume: Litres
  /** 0 to 100. */
  strength: Percent
  /** What one filling of the mixing container may hold, above 0. */
  container: Litres
  /** What a full drum holds, above 0. */
  drum: Litres
  /** Left in the drum that is open, 0 to `drum`; default 0. */
  open?: Litres | undefined
}

export interface DrumBatches {
  /** How often the container is filled; each filling is the same, so that it is measured out the same way every time. */
  fillings: number
  each: { volume: Litres; concentrate: Litres; water: Litres }
  concentrate: Litres
  water: Litres
  drums: {
    /** Taken from the open drum. */
    fromOpen: Litres
    /** Full drums to be opened. */
    opened: number
    /** Left in the last drum opened, or in the open one where it was enough. */
    left: Litres
  }
}

/**
 * Premix in batches from drums: the volume in equal fillings, none above what the container holds, and which drums the concentrate comes from. The
 * open drum is used up first: opened concentrate takes up water and dirt.
 *
 *     fillings = volume / container, rounded up             concentrate = volume · strength / 100
 *
 * Water goes into the container first, the concentrate into the water.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example drumBatches({ volume: 500, strength: 6, container: 200, drum: 205, open: 20 }) // 3 fillings of 166.67 L with 10 L; 20 L from the open drum, 1 opened, 195 L left
 */
export function drumBatches({ volume, strength, container, drum, open = 0 }: DrumQuestion): DrumBatches {
  requireRange('volume', volume, { min: 0, max: 1e7 })
  requireRange('strength', strength, { min: 0, max: 100 })
  requireRange('container', container, { min: 0.1 })
  requireRange('drum', drum, { min: 0.1 })
  requireRange('open', open, { min: 0, max: drum })
  const fillings = Math.max(0, Math.ceil(volume / container - 1e-9))
  const concentrate = (volume * strength) / 100
  const fromOpen = Math.min(open, concentrate)
  const opened = Math.max(0, Math.ceil((concentrate - open) / drum - 1e-9))
  return {
    fillings,
    each: fillings === 0 ? { volume: 0, concentrate: 0, water: 0 } : parted(volume / fillings, strength),
    concentrate,
    water: volume - concentrate,
    drums: { fromOpen, opened, left: Math.max(0, open + opened * drum - concentrate) },
  }
}

/** The premix that uses up a whole amount of concentrate, so that no drum is left standing open. */
export interface DrumToUse {
  /** To be used up, above 0. */
  concentrate: Litres
  /** Of the premix, above 0 to 100. */
  strength: Percent
}

/**
 * How much premix a given amount of concentrate makes: concentrate · 100 / strength.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example volumeFromConcentrate({ concentrate: 205, strength: 5 }) // 4100
 */
export function volumeFromConcentrate({ concentrate, strength }: DrumToUse): Litres {
  requireRange('concentrate', concentrate, { above: 0 })
  requireRange('strength', strength, { above: 0, max: 100 })
  return (concentrate * 100) / strength
}

function parted(volume: Litres, strength: Percent): DrumBatches['each'] {
  const concentrate = (volume * strength) / 100
  return { volume, concentrate, water: volume - concentrate }
}
