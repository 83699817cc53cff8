import {
  concentrationFromBrix,
  type DatedFactor,
  type KnownScales,
  type ScaleInUse,
  say,
  scaleOn,
} from '@sumpbook/fluid'
import type { Thing } from '../api/types.ts'
import { type FieldRead, readBrix, readPercent } from '../fields/read.ts'

/** A strength is measured with the refractometer, or known in percent (titration, made up by measure). */
export type Measure = 'brix' | 'percent'

/** How a fluid turns °Brix into percent. */
export type Scale = ScaleInUse

/** The scale of a fluid of the book as it holds on a day; null where it is not known, or there is no fluid. */
export const scaleOf = (fluid: Thing | undefined, day: string): Scale | null =>
  fluid === undefined ? null : scaleOn(fluid as KnownScales, day)

export const factorsOf = (fluid: Thing | undefined): DatedFactor[] =>
  Array.isArray(fluid?.factors) ? (fluid.factors as DatedFactor[]) : []

/** Percent of a reading; null off the chart. */
export function percentOf(brix: number, scale: Scale): number | null {
  const read = concentrationFromBrix({ brix, ...scale })
  return read.outcome === 'concentration' && read.concentration <= 100 ? read.concentration : null
}

/** Percent from what was typed in either measure. */
export function readMeasured(text: string, measure: Measure, scale: Scale | null): FieldRead {
  if (measure === 'percent') return readPercent(text)
  const read = readBrix(text)
  if ('fault' in read || read.value === null) return read
  if (scale === null)
    return { fault: { found: `${text.trim()} °Brix`, expected: say('percent: this fluid has no factor in the book') } }
  const percent = percentOf(read.value, scale)
  return percent === null
    ? { fault: { found: `${text.trim()} °Brix`, expected: say('a reading that the fluid’s chart or factor reaches') } }
    : { value: percent }
}

/** How the strengths of a mixer are measured, and by which scale. */
export interface Measured {
  measure: Measure
  scale: Scale | null
}
