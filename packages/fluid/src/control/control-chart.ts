import { type CusumChart, cusumChart } from './cusum.ts'
import { type EwmaChart, ewmaChart } from './ewma.ts'
import { type IndividualsChart, individualsChart } from './individuals.ts'
import type { NelsonRule } from './nelson.ts'

/** A series and the chart it is to be held against; fields of other kinds of chart are not used. */
export interface ChartedSeries {
  /** In the order they were read. */
  values: readonly number[]
  kind: 'individuals' | 'ewma' | 'cusum'
  target?: number | undefined
  sd?: number | undefined
  lambda?: number | undefined
  width?: number | undefined
  k?: number | undefined
  h?: number | undefined
  rules?: readonly NelsonRule[] | undefined
}

export type ControlChart = IndividualsChart | EwmaChart | CusumChart

/**
 * The chart of a series that no balance predicts: pH, bacteria, tramp oil. One EWMA beside hard limits is enough for most; run rules piled on each
 * other cry wolf.
 *
 * Reckoned from the values themselves, centre and sd take in whatever was wrong among them: give both once the series is known.
 *
 * @throws {RangeError} a quantity outside the range its field gives, fewer than 2 values without an sd
 */
export function controlChart({ values, kind, ...options }: ChartedSeries): ControlChart {
  const { target, sd, lambda, width, k, h, rules } = options
  switch (kind) {
    case 'individuals':
      return individualsChart(values, { target, sd, width, rules })
    case 'ewma':
      return ewmaChart(values, { target, sd, lambda, width })
    case 'cusum':
      return cusumChart(values, { target, sd, k, h })
  }
}
