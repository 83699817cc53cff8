import { halve } from '../halve.ts'
import { quantile95 } from '../interval90.ts'
import type { Figure } from '../quantities.ts'
import { normalAbove } from '../statistics/normal.ts'

/** A normal part of a mixture, of a quantity or of its logarithm. */
export interface Part {
  probability: number
  mean: number
  sd: number
}

/** Probability that a mixture lies above a value. */
export const above = (parts: readonly Part[], value: number): number =>
  parts.reduce((sum, { probability, mean, sd }) => sum + probability * aboveNormal(value, mean, sd), 0)

function aboveNormal(value: number, mean: number, sd: number): number {
  if (!(sd > 0)) return mean > value ? 1 : 0
  return normalAbove(Math.min(30, Math.max(-30, (value - mean) / sd)))
}

/** The value under which a share of a mixture lies. */
export function quantile(parts: readonly Part[], share: number): number {
  const low = Math.min(...parts.map(({ mean, sd }) => mean - 8 * sd))
  const high = Math.max(...parts.map(({ mean, sd }) => mean + 8 * sd))
  if (!(high > low)) return low
  return halve(low, high, (value) => above(parts, value) > 1 - share)
}

/** A mixture as a figure, none of it below `floor`. */
export function figureOf(parts: readonly Part[], floor: number, most = Number.POSITIVE_INFINITY): Figure {
  const clip = (value: number) => Math.min(most, Math.max(floor, value))
  const mean = parts.reduce((sum, part) => sum + part.probability * part.mean, 0)
  const variance = parts.reduce((sum, part) => sum + part.probability * (part.sd ** 2 + (part.mean - mean) ** 2), 0)
  const sd = Math.sqrt(Math.max(variance, 0))
  const [one] = parts
  const narrow = parts.length === 1 && one !== undefined
  return {
    mean: clip(mean),
    sd,
    low90: clip(narrow ? mean - quantile95 * sd : quantile(parts, 0.05)),
    high90: clip(narrow ? mean + quantile95 * sd : quantile(parts, 0.95)),
  }
}

/** The inner half of a mixture. */
export function innerOf(parts: readonly Part[], floor: number): { low: number; high: number } {
  return { low: Math.max(floor, quantile(parts, 0.25)), high: Math.max(floor, quantile(parts, 0.75)) }
}

/** A mixture of logarithms as a figure of the quantity itself: its mean, sd and interval. */
export function figureOfLogs(parts: readonly Part[]): Figure {
  const moments = parts.map(({ probability, mean, sd }) => {
    const s = Math.min(sd, 2)
    const middle = Math.exp(mean + s ** 2 / 2)
    return { probability, middle, square: middle ** 2 * Math.exp(s ** 2) }
  })
  const mean = moments.reduce((sum, part) => sum + part.probability * part.middle, 0)
  const square = moments.reduce((sum, part) => sum + part.probability * part.square, 0)
  return {
    mean,
    sd: Math.sqrt(Math.max(square - mean ** 2, 0)),
    low90: Math.exp(quantile(parts, 0.05)),
    high90: Math.exp(quantile(parts, 0.95)),
  }
}
