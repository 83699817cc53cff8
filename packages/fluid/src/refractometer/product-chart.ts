import { halve } from '../halve.ts'
import type { Brix, Percent } from '../quantities.ts'
import { OutOfRange, requireRange } from '../require.ts'

/** A fluid's chart from its product sheet: [°Brix, percent] pairs, at least two, both strictly increasing. */
export type ProductChart = readonly (readonly [brix: Brix, percent: Percent])[]

/** Either a point on the chart, or where the chart ends: it is never carried on beyond. */
export type ChartPoint =
  | {
      outcome: 'on-chart'
      brix: Brix
      percent: Percent
      /** Percent per °Brix there: how much a reading error counts. */
      slope: number
    }
  | { outcome: 'off-chart'; quantity: 'brix' | 'percent'; found: number; low: number; high: number }

/**
 * The strength a product chart gives for a reading, between its points along a curve that never turns back: piecewise
 * cubic, with the slopes held to where each piece stays monotone.
 *
 * Source: F. N. Fritsch, R. E. Carlson, "Monotone piecewise cubic interpolation", SIAM J. Numer. Anal. 17 (1980)
 * 238–246: mean of the neighbouring secants as first slopes, cut back onto the circle α² + β² = 9.
 *
 * @throws {RangeError} a chart with fewer than two points or not strictly increasing, a reading that is no number
 * @example percentFromChart([[0, 0], [2, 3], [4, 7]], 2) // { outcome: 'on-chart', brix: 2, percent: 3, … }
 */
export function percentFromChart(chart: ProductChart, brix: Brix): ChartPoint {
  const curve = curveOf(chart)
  requireRange('brix', brix, {})
  const { xs } = curve
  if (brix < xs[0]! || brix > xs.at(-1)!) return offChart('brix', brix, xs)
  const piece = pieceAt(xs, brix)
  return { outcome: 'on-chart', brix, ...along(curve, piece, brix) }
}

/**
 * The reading at which a product chart gives a strength: the inverse of {@link percentFromChart}, to the last bits of a double.
 *
 * @throws {RangeError} a chart with fewer than two points or not strictly increasing, a strength that is no number
 */
export function brixFromChart(chart: ProductChart, percent: Percent): ChartPoint {
  const curve = curveOf(chart)
  requireRange('percent', percent, {})
  const { xs, ys } = curve
  if (percent < ys[0]! || percent > ys.at(-1)!) return offChart('percent', percent, ys)
  const piece = pieceAt(ys, percent)
  const brix = halve(xs[piece]!, xs[piece + 1]!, (x) => along(curve, piece, x).percent < percent)
  return { outcome: 'on-chart', brix, percent, slope: along(curve, piece, brix).slope }
}

/** A chart with the slope at each of its points. */
interface Curve {
  xs: readonly Brix[]
  ys: readonly Percent[]
  slopes: readonly number[]
}

function curveOf(chart: ProductChart): Curve {
  if (chart.length < 2) throw new OutOfRange('chart', chart.length, 'at least 2 points')
  for (const [index, [brix, percent]] of chart.entries()) {
    const before = chart[index - 1]
    requireRange(`chart.${index}.0`, brix, { min: 0, max: 95, above: before?.[0] })
    requireRange(`chart.${index}.1`, percent, { min: 0, max: 100, above: before?.[1] })
  }
  const xs = chart.map(([brix]) => brix)
  const ys = chart.map(([, percent]) => percent)
  return { xs, ys, slopes: monotoneSlopes(xs, ys) }
}

function monotoneSlopes(xs: readonly number[], ys: readonly number[]): readonly number[] {
  const last = xs.length - 1
  const secants = xs.slice(1).map((x, k) => (ys[k + 1]! - ys[k]!) / (x - xs[k]!))
  const slopes = xs.map((_, k) => {
    if (k === 0) return secants[0]!
    if (k === last) return secants[last - 1]!
    return (secants[k - 1]! + secants[k]!) / 2
  })
  for (const [k, secant] of secants.entries()) {
    const [alpha, beta] = [slopes[k]! / secant, slopes[k + 1]! / secant]
    const reach = Math.hypot(alpha, beta)
    if (reach <= 3) continue
    slopes[k] = (3 / reach) * alpha * secant
    slopes[k + 1] = (3 / reach) * beta * secant
  }
  return slopes
}

/** The cubic of Hermite on one piece, and its slope. */
function along({ xs, ys, slopes }: Curve, piece: number, x: number): { percent: Percent; slope: number } {
  const width = xs[piece + 1]! - xs[piece]!
  const t = (x - xs[piece]!) / width
  const [y0, y1] = [ys[piece]!, ys[piece + 1]!]
  const [m0, m1] = [slopes[piece]! * width, slopes[piece + 1]! * width]
  const rise = y1 - y0
  const percent = t === 1 ? y1 : y0 + t * (m0 + t * (3 * rise - 2 * m0 - m1 + t * (m0 + m1 - 2 * rise)))
  const slope = (m0 + t * (2 * (3 * rise - 2 * m0 - m1) + 3 * t * (m0 + m1 - 2 * rise))) / width
  return { percent: Math.min(Math.max(percent, y0), y1), slope: Math.max(0, slope) }
}

function pieceAt(values: readonly number[], value: number): number {
  let piece = 0
  while (piece < values.length - 2 && value >= values[piece + 1]!) piece += 1
  return piece
}

function offChart(quantity: 'brix' | 'percent', found: number, values: readonly number[]): ChartPoint {
  return { outcome: 'off-chart', quantity, found, low: values[0]!, high: values.at(-1)! }
}
