import type { ProductChart } from '../refractometer/product-chart.ts'
import { OutOfRange } from '../require.ts'
import { monotoneFit } from '../statistics/monotone.ts'
import { type FactorOptions, type KnownMix, requireMixes } from './factor.ts'

/**
 * A product chart from mixes of known strength, for a product that is no straight line: repeats of a strength are averaged, readings that fall where
 * the strength rises are pooled with their neighbours, and through zero the chart begins at 0 °Brix and 0 %.
 *
 * @throws {RangeError} a quantity outside the range its field gives, mixes that come to fewer than two points
 * @example chartFromMixes([{ percent: 5, brix: 3 }, { percent: 10, brix: 7 }]) // [[0, 0], [3, 5], [7, 10]]
 */
export function chartFromMixes(mixes: readonly KnownMix[], { throughZero = true }: FactorOptions = {}): ProductChart {
  requireMixes(mixes)
  const strengths = [...new Set(mixes.map(({ percent }) => percent))].sort((a, b) => a - b)
  const readings = strengths.map((strength) => {
    const brix = mixes.filter(({ percent }) => percent === strength).map((mix) => mix.brix)
    return { value: brix.reduce((sum, value) => sum + value, 0) / brix.length, weight: brix.length }
  })
  const pooled = new Map<number, { percents: number; weight: number }>()
  for (const [index, brix] of monotoneFit(readings).entries()) {
    const { percents, weight } = pooled.get(brix) ?? { percents: 0, weight: 0 }
    const more = readings[index]!.weight
    pooled.set(brix, { percents: percents + strengths[index]! * more, weight: weight + more })
  }
  const points = [...pooled].map(([brix, { percents, weight }]) => [brix, percents / weight] as const)
  const above = throughZero ? points.filter(([brix, percent]) => brix > 0 && percent > 0) : points
  const chart = throughZero ? [[0, 0] as const, ...above] : above
  if (chart.length < 2) throw new OutOfRange('mixes', mixes.length, 'mixes whose readings rise with their strength')
  return chart
}
