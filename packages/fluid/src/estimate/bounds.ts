import type { Belief } from '../filter/index.ts'
import {
  bias,
  carryOff,
  chloride,
  evaporation,
  fill,
  full,
  gain,
  gauge,
  hardness,
  holdUp,
  pours,
  scale,
  strength,
  titration,
} from './state.ts'

/** Between which ends a quantity can lie at all, and the widest sd that still says something. */
const bounds: readonly { i: number; least: number; most: number; widest: number }[] = [
  { i: fill, least: 0.001, most: 4, widest: 1.2 },
  { i: strength, least: 0, most: 99, widest: 28 },
  { i: hardness, least: 0, most: 20_000, widest: 3000 },
  { i: chloride, least: 0, most: 20_000, widest: 3000 },
  // A hundred-thousandth of the mark a day is none, a third of it every day is a leak.
  { i: evaporation, least: -11.5, most: -1.1, widest: 1.5 },
  { i: carryOff, least: -11.5, most: -1.1, widest: 1.5 },
  { i: scale, least: -2.5, most: 2.5, widest: 0.9 },
  { i: bias, least: -3, most: 3, widest: 1.5 },
  { i: titration, least: -5, most: 5, widest: 3 },
  { i: holdUp, least: 0, most: 0.6, widest: 0.3 },
  { i: pours, least: -1, most: 1, widest: 0.5 },
  { i: gauge, least: -0.6, most: 0.6, widest: 0.3 },
  { i: full, least: 0.2, most: 1.8, widest: 0.5 },
  { i: gain, least: -20, most: 20, widest: 5 },
]

/**
 * Holds a belief to what can be: nothing is less than nothing, and a quantity of which nothing is known is not unknown to every size. Too
 * wide a quantity is drawn in together with what it is tied to, so that the covariance stays one:
 *
 *     P ← D P D,  D: widest / sd for that quantity, 1 for the others
 */
export function holdToBounds({ size, mean, cov }: Belief): void {
  for (const { i, least, most, widest } of bounds) {
    if (i >= size) return
    const value = mean[i]!
    if (!(value >= least)) mean[i] = least
    else if (value > most) mean[i] = most
    const variance = cov[i * size + i]!
    if (variance > widest * widest) drawIn(cov, size, i, widest / Math.sqrt(variance))
  }
}

function drawIn(cov: Float64Array, size: number, i: number, share: number): void {
  for (let j = 0; j < size; j++) {
    cov[i * size + j]! *= share
    cov[j * size + i]! *= share
  }
}
