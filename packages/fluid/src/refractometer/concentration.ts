import { interval90 } from '../interval90.ts'
import type { Brix, Percent, Sd } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { brixFromChart, type ChartPoint, type ProductChart, percentFromChart } from './product-chart.ts'

/** How a fluid's sheet turns °Brix into percent: one factor, or a chart. */
export type BrixScale =
  | {
      /** Percent per °Brix, above 0. */
      factor: number
      chart?: undefined
      /** Doubt of the factor, percent per °Brix. */
      factorSd?: Sd | undefined
    }
  | {
      chart: ProductChart
      /** A chart wins over a factor. */
      factor?: number | undefined
      factorSd?: Sd | undefined
    }

/** One reading of a refractometer. */
export type BrixReading = BrixScale & {
  /** As read, 0 to 95. */
  brix: Brix
  /** What the same instrument reads on the shop's water; 0 where it was set to zero with that water. */
  waterBrix?: Brix | undefined
  /** The step between two marks of the scale, or the last digit of a display; 0.2 unless given. */
  resolution?: Brix | undefined
  /** 1 for the fluid itself, 2 where sample and zeroing water were mixed 1 : 1 to sharpen a blurred line. */
  diluted?: number | undefined
}

/** The strength of the fluid read, with what the scale and the factor leave open. */
export interface Concentration {
  outcome: 'concentration'
  concentration: Percent
  sd: Sd
  low90: Percent
  high90: Percent
}

export type OffChart = Extract<ChartPoint, { outcome: 'off-chart' }>

/**
 * The concentration behind a refractometer reading:
 *
 *     concentration = diluted × factor × (brix − waterBrix)
 *     concentration = diluted × chart(brix − waterBrix)
 *
 * Its doubt after the GUM (JCGM 100:2008, 4.3.7 and 5.1.2): a value on a scale with steps of `resolution` lies anywhere
 * within one step (sd resolution / √12); where the water was read too (`waterBrix` is not 0), it bears the same doubt; the factor adds its own.
 *
 *     sd² = diluted² (factor² (u² + u²) + (brix − waterBrix)² factorSd²)         u = resolution / √12
 *
 * With a chart its slope at the reading stands for the factor, and `factorSd` is not used. A reading below the water's is taken
 * as no concentrate at all. Not in the doubt, because no single reading shows it: tramp oil and dirt lift the reading, a wrong
 * temperature shifts it. Dilution sharpens the line; it does not take the tramp oil's share out.
 *
 * Source: DGUV Regel 109-003 §7.1.1 (reading times product factor).
 *
 * @throws {RangeError} a quantity outside the range its field gives, a chart that does not rise
 * @example concentrationFromBrix({ brix: 2.1, factor: 1.5, diluted: 2 }) // concentration 6.3
 */
export function concentrationFromBrix(reading: BrixReading & { chart?: undefined }): Concentration
export function concentrationFromBrix(reading: BrixReading): Concentration | OffChart
export function concentrationFromBrix(reading: BrixReading): Concentration | OffChart {
  const { brix, waterBrix = 0, resolution = 0.2, diluted = 1, factorSd = 0 } = reading
  requireRange('brix', brix, { min: 0, max: 95 })
  requireRange('waterBrix', waterBrix, { min: 0, max: 95 })
  requireRange('resolution', resolution, { min: 0 })
  requireRange('factorSd', factorSd, { min: 0 })
  requireRange('diluted', diluted, { min: 1 })

  const net = Math.max(0, brix - waterBrix)
  const point = onScale(reading, net)
  if (point.outcome === 'off-chart') return point
  const concentration = diluted * point.percent
  const readingSd = (resolution / Math.sqrt(12)) * (waterBrix === 0 ? 1 : Math.SQRT2)
  const scaleSd = reading.chart === undefined ? factorSd * net : 0
  const sd = diluted * Math.hypot(point.slope * readingSd, scaleSd)
  return { outcome: 'concentration', concentration, sd, ...interval90(concentration, sd, 0) }
}

/** A strength, and the scale on which it is to be read. */
export type ConcentrationToRead = BrixScale & {
  /** 0 to 100. */
  concentration: Percent
  waterBrix?: Brix | undefined
  diluted?: number | undefined
}

/**
 * What a refractometer will show for a concentration: the inverse of {@link concentrationFromBrix}. Answers "what must I
 * read at the target?".
 *
 *     brix = waterBrix + concentration / diluted / factor
 *
 * @throws {RangeError} a quantity outside the range its field gives, a chart that does not rise
 * @example brixFromConcentration({ concentration: 8, factor: 1.6 }) // { outcome: 'brix', brix: 5 }
 */
export function brixFromConcentration(mix: ConcentrationToRead & { chart?: undefined }): { outcome: 'brix'; brix: Brix }
export function brixFromConcentration(mix: ConcentrationToRead): { outcome: 'brix'; brix: Brix } | OffChart
export function brixFromConcentration(mix: ConcentrationToRead): { outcome: 'brix'; brix: Brix } | OffChart {
  const { concentration, waterBrix = 0, diluted = 1 } = mix
  requireRange('concentration', concentration, { min: 0, max: 100 })
  requireRange('waterBrix', waterBrix, { min: 0, max: 95 })
  requireRange('diluted', diluted, { min: 1 })
  const percent = concentration / diluted
  if (mix.chart === undefined) {
    requireRange('factor', mix.factor, { above: 0 })
    return { outcome: 'brix', brix: waterBrix + percent / mix.factor }
  }
  const point = brixFromChart(mix.chart, percent)
  return point.outcome === 'off-chart' ? point : { outcome: 'brix', brix: waterBrix + point.brix }
}

function onScale(scale: BrixScale, brix: Brix): ChartPoint {
  if (scale.chart !== undefined) return percentFromChart(scale.chart, brix)
  requireRange('factor', scale.factor, { above: 0 })
  return { outcome: 'on-chart', brix, percent: scale.factor * brix, slope: scale.factor }
}
