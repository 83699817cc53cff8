import type { Litres } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** What is to be emptied. */
export interface ToDrain {
  /** At the full mark, above 0. */
  volume: Litres
  /** What stays at each drain. */
  heldBack: Litres
  /** How much chips and sludge lie in it; null where nobody looked. */
  solids: 'little' | 'much' | null
}

/** How a sump is emptied. */
export interface DrainWay {
  way: 'pump' | 'vacuum-truck' | 'drum-and-hand'
  /** Litres an hour, about (common practice, no source). */
  perHour: Litres
  /** What a bucket gets out only with trouble, and a wet vacuum does better. */
  hard: Litres
}

/** From here on a truck is called: a pump and containers take a shift (common practice, no source). */
const truckFrom: Litres = 1500
/** Up to here a drum and a bucket do (common practice, no source). */
const handUpTo: Litres = 60
/** Under this share of the level bailing gets hard (common practice, no source). */
const hardBelow = 0.3
const perHour = { pump: 1800, 'vacuum-truck': 9000, 'drum-and-hand': 120 } as const

/**
 * The way of draining that fits a sump: a drum and a bucket for a small one, a pump for most, a vacuum truck for a large one and for one
 * full of sludge, which no pump lifts. Under about 30 % of the level bailing gets hard.
 *
 * Source: common practice, no source; the shop's own way wins.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example drainWay({ volume: 200, heldBack: 10, solids: 'little' }) // way 'pump', hard 60
 */
export function drainWay({ volume, heldBack, solids }: ToDrain): DrainWay {
  requireRange('volume', volume, { above: 0 })
  requireRange('heldBack', heldBack, { min: 0, max: volume })
  const way = wayOf(volume, solids)
  return { way, perHour: perHour[way], hard: Math.max(heldBack, hardBelow * volume) }
}

function wayOf(volume: Litres, solids: ToDrain['solids']): DrainWay['way'] {
  if (volume >= truckFrom) return 'vacuum-truck'
  if (volume <= handUpTo) return 'drum-and-hand'
  return solids === 'much' && volume >= truckFrom / 2 ? 'vacuum-truck' : 'pump'
}
