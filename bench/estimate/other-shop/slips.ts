import type { Chance } from '../simulate/random.ts'

/** Share of the readings that are written down wrongly. */
export const slipShare = 0.016
/** °Brix under which a slip is nothing that anybody could tell from a good reading. */
export const leastSlip = 0.5

/** What is written instead of what was shown, or null where it is written right. */
export function slipOf(shown: number, chance: Chance): number | null {
  if (!chance.happens(slipShare)) return null
  const written = chance.pick([pointMoved, digitsExchanged, wholeOff, wholeOff])(shown, chance)
  return Math.abs(written - shown) < leastSlip || written < 0 || written > 95 ? null : written
}

const tenths = (value: number): number => Number(value.toFixed(1))

/** 5.2 becomes 52 or 0.5. */
export const pointMoved = (shown: number, chance: Chance): number =>
  tenths(chance.happens(0.5) ? shown * 10 : shown / 10)

/** 5.2 becomes 2.5, and 10.4 becomes 14.0. */
export function digitsExchanged(shown: number): number {
  const [whole = '', tenth = ''] = shown.toFixed(1).split('.')
  return Number(`${whole.slice(0, -1)}${tenth}.${whole.slice(-1)}`)
}

/** A line of the scale is miscounted. */
export const wholeOff = (shown: number, chance: Chance): number =>
  tenths(shown + chance.pick([-1, 1]) * chance.pick([1, 1, 2, 3]))
