import { message } from '@sumpbook/fluid'
import type { Measurement, Thing } from '../api/types.ts'
import { type FieldRead, readConductivity, readDissolved, readHardness, readPh } from '../fields/read.ts'

/** What an analysis of a water tells, in the order in which a report has it. */
export const analysed = [
  { key: 'hardness', label: message('Hardness, ppm as CaCO3'), word: message('hardness'), unit: 'ppm', decimals: 0 },
  { key: 'chloride', label: message('Chloride, mg/L'), word: message('chloride'), unit: 'mg/L', decimals: 0 },
  { key: 'sulfate', label: message('Sulfate, mg/L'), word: message('sulfate'), unit: 'mg/L', decimals: 0 },
  { key: 'nitrate', label: message('Nitrate as NO3, mg/L'), word: message('nitrate'), unit: 'mg/L', decimals: 1 },
  {
    key: 'conductivity',
    label: message('Conductivity at 25 °C, mS/cm'),
    word: message('conductivity'),
    unit: 'mS/cm',
    decimals: 2,
  },
  { key: 'ph', label: message('pH'), word: message('pH'), unit: '', decimals: 1 },
] as const
export type Analysed = (typeof analysed)[number]['key']

export type Analysis = Extract<Measurement, { kind: 'analysis' }>

export const analysesIn = (measurements: readonly Measurement[]): Analysis[] =>
  measurements.filter((entry): entry is Analysis => entry.kind === 'analysis')

export const analysisReaders: Readonly<Record<Analysed, (text: string) => FieldRead>> = {
  hardness: (text) => readHardness(text),
  chloride: (text) => readDissolved(text),
  sulfate: (text) => readDissolved(text),
  nitrate: (text) => readDissolved(text),
  conductivity: (text) => readConductivity(text),
  ph: readPh,
}

/** A figure of a water as the book reckons with it; null where it is not known. */
export const figureOfWater = (water: Thing | undefined, key: Analysed | 'costPerLitre'): number | null =>
  typeof water?.[key] === 'number' ? water[key] : null

/**
 * What the book has to reckon with after an analysis, field by field, and what it reckoned with before: only what was
 * measured, and only what changes.
 */
export function presentAfter(
  water: Thing,
  values: Partial<Record<Analysed, number>>,
): { changes: Record<string, number>; was: Record<string, number | null> } | null {
  const changed = Object.entries(values).filter(([key, value]) => water[key] !== value)
  if (changed.length === 0) return null
  return {
    changes: Object.fromEntries(changed),
    was: Object.fromEntries(changed.map(([key]) => [key, figureOfWater(water, key as Analysed)])),
  }
}

/** Whether an analysis of a day is younger than all that are there. */
export const isYoungest = (at: string, analyses: readonly Analysis[]): boolean =>
  analyses.every((other) => Date.parse(other.at) <= Date.parse(at))

/** How a figure moved over the analyses that have it: from the first to the last, and the widest apart. */
export interface Drift {
  first: number
  last: number
  low: number
  high: number
  n: number
}

export function driftOf(analyses: readonly Analysis[], key: Analysed): Drift | null {
  const values = analyses.flatMap((analysis) => (typeof analysis[key] === 'number' ? [analysis[key]] : []))
  if (values.length === 0) return null
  return {
    first: values[0]!,
    last: values.at(-1)!,
    low: Math.min(...values),
    high: Math.max(...values),
    n: values.length,
  }
}

/** The instant of an analysis of a day: now where it is today, noon of that day before. */
export function instantOf(day: string, today: string, now: string): string {
  return day === today ? now : `${day}T12:00:00${now.slice(-6)}`
}

/** Waters by what they are, in words; softened water never tops up a sump as a routine. */
export const kindWords: Readonly<Record<string, string>> = {
  tap: message('tap'),
  well: message('well'),
  softened: message('softened'),
  'reverse-osmosis': message('reverse osmosis'),
  deionised: message('deionised'),
}
