import { percentFromChart } from '@sumpbook/fluid'
import type { Fluid, Sump } from '../../schema/things/index.ts'

/** What a machine's fluid is kept between, and what a °Brix of it means. */
export interface MachineBand {
  low: number
  high: number
  /** Percent of a reading; null off the product's chart. */
  percentOf(brix: number): number | null
}

/** Plain figures under the name of one machine. */
export interface MachineFigures {
  figures: readonly number[]
  band: MachineBand
}

/** Fewer figures than this say nothing. */
const fewest = 3
/** How much farther from the bands the figures must lie as percent for °Brix to be evident. */
const evident = 1.5

/**
 * Whether figures that no heading explains are evidently °Brix: taken so they lie in or near the bands of their fluids, and taken
 * as percent they would lie clearly farther off; or the factors are so near 1 that both are the same. Anything less is asked.
 */
export function areEvidentlyBrix(machines: readonly MachineFigures[]): boolean {
  const all = machines.flatMap(({ figures, band }) => figures.map((figure) => ({ figure, band })))
  if (all.length < fewest) return false
  const asBrix = all.map(({ figure, band }) => distance(band.percentOf(figure), band))
  const asPercent = all.map(({ figure, band }) => distance(figure, band))
  const same = all.every(({ figure, band }) => Math.abs((band.percentOf(figure) ?? 0) - figure) <= 0.1 * figure)
  return same || (sum(asPercent) > 0 && evident * sum(asBrix) <= sum(asPercent))
}

/** The band of a sump's fluid as a book tells it; null where it does not tell enough. */
export function bandOf(sump: Sump, fluid: Fluid | undefined): MachineBand | null {
  const { low, high } = { ...fluid?.limits?.concentration, ...sump.limits?.concentration }
  const percentOf = scaleOf(fluid)
  return low === undefined || high === undefined || percentOf === null ? null : { low, high, percentOf }
}

function scaleOf({ brixChart, brixFactor }: Partial<Fluid> = {}): MachineBand['percentOf'] | null {
  if (brixChart !== undefined) {
    return (brix) => {
      const point = percentFromChart(brixChart, brix)
      return point.outcome === 'on-chart' ? point.percent : null
    }
  }
  return brixFactor === undefined ? null : (brix) => brixFactor * brix
}

/** In widths of the band; a figure off the chart is as far off as the band is high. */
function distance(percent: number | null, { low, high }: MachineBand): number {
  const outside = percent === null ? high : Math.max(low - percent, percent - high, 0)
  return outside / Math.max(high - low, 0.1)
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
