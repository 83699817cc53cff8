import {
  celsiusFrom,
  celsiusTo,
  hardnessFrom,
  litresFrom,
  percentFromOneIn,
  percentFromWaterParts,
  readNumber,
  readQuantity,
  say,
  sayNumber,
} from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'
import { shopUnits } from '../say/units.ts'
import { sayExpected, sayFound } from './fault-words.ts'

/** What is wrong with a field's text. */
export interface Fault {
  found: string
  expected: string
}

/** Either the canonical value of a field's text, or its fault. Empty text is its own case: nothing was typed. */
export type FieldRead = { value: number | null } | { fault: Fault }

/** The ends a value must lie between, in the unit of the field. */
export interface Ends {
  min?: number
  max?: number
  /** The value must be greater than this. */
  above?: number
}

/** Litres from a volume in the shop's unit, or in a unit typed behind it. */
export function readLitres(text: string, units: Units, ends: Ends = { min: 0 }): FieldRead {
  if (text.trim() === '') return { value: null }
  const { volume, gallons } = shopUnits[units]
  const read = readQuantity(text, { kind: 'volume', gallons, unit: volume })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  return within(text, read.value, ends) ?? { value: litresFrom(read.value, read.unit ?? volume) }
}

/** Percent from "18", "18 %", "1:20" (1 part to 20 parts water) or "1 in 20" (parts of mix). */
export function readStrength(text: string): FieldRead {
  if (text.trim() === '') return { value: null }
  const read = readQuantity(text, { kind: 'strength', unit: '%' })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  if (read.unit === 'water-parts') return { value: percentFromWaterParts(read.value) }
  if (read.unit === 'one-in') {
    return within(text, read.value, { min: 1 }) ?? { value: percentFromOneIn(read.value) }
  }
  return within(text, read.value, { min: 0, max: 100 }) ?? { value: read.value }
}

/** Percent from "8" or "8 %". */
export function readPercent(text: string, ends: Ends = { min: 0, max: 100 }): FieldRead {
  if (text.trim() === '') return { value: null }
  const read = readQuantity(text, { kind: 'percent', unit: '%' })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  return within(text, read.value, ends) ?? { value: read.value }
}

/** A number without a unit. */
export function readPlain(text: string, ends: Ends = {}): FieldRead {
  if (text.trim() === '') return { value: null }
  const read = readNumber(text, ends.max === undefined ? {} : { largest: ends.max })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  return within(text, read.value, ends) ?? { value: read.value }
}

/** `fluid` says "found …, expected …" in one; a field shows the two apart. */
export function faultParts(fault: string): Fault {
  const at = fault.search(/[,;] expected /)
  const [found, expected] = at < 0 ? [fault, 'a number such as 7.5'] : [fault.slice(0, at), fault.slice(at)]
  return {
    found: sayFound(found.replace(/^found /, '')),
    expected: sayExpected(expected.replace(/^[,;] expected /, '')),
  }
}

function within(text: string, value: number, { min, max, above }: Ends): { fault: Fault } | null {
  const fits =
    (min === undefined || value >= min) && (max === undefined || value <= max) && (above === undefined || value > above)
  if (fits) return null
  return { fault: { found: text.trim(), expected: sayEnds({ min, max, above }) } }
}

function sayEnds({ min, max, above }: { [end in keyof Ends]: Ends[end] | undefined }): string {
  if (max === undefined) {
    return above === undefined
      ? say('at least {min}', { min: plain(min ?? 0) })
      : say('above {above}', { above: plain(above) })
  }
  if (above !== undefined) return say('above {above} and at most {max}', { above: plain(above), max: plain(max) })
  if (min !== undefined) return say('at least {min} and at most {max}', { min: plain(min), max: plain(max) })
  return say('at most {max}', { max: plain(max) })
}

const plain = (value: number) => sayNumber(value, Number.isInteger(value) ? 0 : 1)

/** What was typed, with the unit of its field where none was. */
export const withUnit = (text: string, unit: string): string =>
  /[^\d.,'’\s-]/.test(text) ? text.trim() : `${text.trim()} ${unit}`

/** °Brix as shown. */
export const readBrix = (text: string, ends: Ends = { min: 0, max: 95 }): FieldRead => readIn(text, '°Brix', ends)

/** Hardness in mg/L as CaCO3 from "260", "14 °dH" or "15 gpg". */
export function readHardness(text: string, ends: Ends = { min: 0 }): FieldRead {
  if (text.trim() === '') return { value: null }
  const read = readQuantity(text, { kind: 'hardness', unit: 'ppm' })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  return within(text, read.value, ends) ?? { value: hardnessFrom(read.value, read.unit ?? 'ppm') }
}

/** mg/L of something dissolved. */
export const readDissolved = (text: string, ends: Ends = { min: 0 }): FieldRead => readIn(text, 'mg/L', ends)

/** mS/cm from "0.62" or "620 µS/cm". */
export function readConductivity(text: string, ends: Ends = { min: 0 }): FieldRead {
  if (text.trim() === '') return { value: null }
  const read = readQuantity(text, { kind: 'conductivity', unit: 'mS/cm' })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  return within(text, read.value, ends) ?? { value: read.unit === 'µS/cm' ? read.value / 1000 : read.value }
}

export function readPh(text: string): FieldRead {
  if (text.trim() === '') return { value: null }
  const read = readQuantity(text, { kind: 'ph', unit: 'pH' })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  return within(text, read.value, { min: 0, max: 14 }) ?? { value: read.value }
}

/** °C from the shop's degrees, or from a unit typed behind them. */
export function readTemperature(text: string, units: Units): FieldRead {
  if (text.trim() === '') return { value: null }
  const unit = shopUnits[units].temperature
  const read = readQuantity(text, { kind: 'temperature', unit })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  const typed = read.unit ?? unit
  const ends = { min: celsiusTo(0, typed), max: celsiusTo(60, typed) }
  return within(text, read.value, ends) ?? { value: celsiusFrom(read.value, typed) }
}

/** A quantity that is typed in one unit only. */
function readIn(text: string, unit: '°Brix' | 'mg/L', ends: Ends): FieldRead {
  if (text.trim() === '') return { value: null }
  const read =
    unit === '°Brix' ? readQuantity(text, { kind: 'brix', unit }) : readQuantity(text, { kind: 'dissolved', unit })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  return within(text, read.value, ends) ?? { value: read.value }
}
