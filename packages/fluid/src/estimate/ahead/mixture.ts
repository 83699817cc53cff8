import { quantile95 } from '../../interval90.ts'
import type { Figure } from '../../quantities.ts'

/** A normal part of a mixture, of a quantity or of its logarithm. */
export interface Part {
  probability: number
  mean: number
  sd: number
}

/** Probability that a mixture lies above a value. */
export function above(parts: readonly Part[], value: number): number {
  let sum = 0
  for (const { probability, mean, sd } of parts) {
    sum += probability * (sd > 0 ? tail((value - mean) / sd) : mean > value ? 1 : 0)
  }
  return sum
}

/**
 * The standard normal's share above z, to 1.5e-7 for any z: quick, for figures that are looked up many times.
 *
 * Source: C. Hastings; M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 7.1.26 with erfc(x) = 2 Q(x √2).
 */
export function tail(z: number): number {
  const x = Math.abs(z) / Math.SQRT2
  const t = 1 / (1 + 0.3275911 * x)
  const series = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))))
  const upper = 0.5 * series * Math.exp(-x * x)
  return z < 0 ? 1 - upper : upper
}

/** Halvings after which a quantile is known to a millionth of an sd. */
const halvings = 26

/** The value under which a share of a mixture lies. */
export function quantile(parts: readonly Part[], share: number): number {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const { mean, sd } of parts) {
    low = Math.min(low, mean - 6 * sd)
    high = Math.max(high, mean + 6 * sd)
  }
  for (let i = 0; i < halvings && high > low; i++) {
    const middle = (low + high) / 2
    if (above(parts, middle) > 1 - share) low = middle
    else high = middle
  }
  return (low + high) / 2
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
    // Nothing that lies between two ends is more uncertain than half of what is between them.
    sd: Math.min(sd, (most - floor) / 2),
    // A far branch of small probability may draw the mean out of the interval; an interval holds its figure.
    low90: clip(Math.min(mean, narrow ? mean - quantile95 * sd : quantile(parts, 0.05))),
    high90: clip(Math.max(mean, narrow ? mean + quantile95 * sd : quantile(parts, 0.95))),
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
    low90: Math.min(mean, Math.exp(quantile(parts, 0.05))),
    high90: Math.max(mean, Math.exp(quantile(parts, 0.95))),
  }
}
