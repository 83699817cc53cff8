import { concentrationFromBrix } from '@sumpbook/fluid'
import type { Thing } from '../api/types.ts'
import { type FieldRead, readBrix, readPercent } from '../fields/read.ts'

/** A strength is measured with the refractometer, or known in percent (titration, made up by measure). */
export type Measure = 'brix' | 'percent'

/** How a fluid turns °Brix into percent; null where it is not known. */
export type Scale = { chart: readonly (readonly [number, number])[] } | { factor: number }

/** The scale of a fluid as it holds on a day: its chart, else the last factor that began by then, else its own factor. */
export function scaleOn(fluid: Thing | undefined, day: string): Scale | null {
  if (fluid === undefined) return null
  if (Array.isArray(fluid.brixChart)) return { chart: fluid.brixChart as [number, number][] }
  const begun = factorsOf(fluid)
    .filter(({ from, lot }) => lot === undefined && (from ?? '') <= day)
    .toSorted((a, b) => ((a.from ?? '') < (b.from ?? '') ? -1 : 1))
  const factor = begun.at(-1)?.brixFactor ?? fluid.brixFactor
  return typeof factor === 'number' ? { factor } : null
}

export interface DatedFactor {
  from?: string
  lot?: string
  brixFactor: number
}

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
    return { fault: { found: `${text.trim()} °Brix`, expected: 'percent: this fluid has no factor in the book' } }
  const percent = percentOf(read.value, scale)
  return percent === null
    ? { fault: { found: `${text.trim()} °Brix`, expected: 'a reading that the fluid’s chart or factor reaches' } }
    : { value: percent }
}
