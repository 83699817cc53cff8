import { percentFromOneIn, percentFromWaterParts, say } from '@sumpbook/fluid'
import type { Fault } from '../../errors.ts'
import type { Value } from '../../schema/values.ts'
import type { SheetField } from '../sheet-types.ts'
import { mapValue, readCell } from './cells.ts'
import type { SheetColumn } from './columns.ts'
import type { DecimalRule } from './decimals.ts'
import { type NumberField, numberFields } from './fields.ts'
import { canonicalUnit, type ShopUnits, type Unit, unitNamed, unitNames } from './units.ts'

/** A number of a row, in the book's unit. */
export interface Measure {
  field: NumberField
  value: Value
  /** As typed, with its unit. */
  typed: string
  column: SheetColumn
}

/** A cell that holds nothing, a number, something wrong, or a number whose unit or decimal sign is still asked. */
export type MeasureRead =
  | { outcome: 'gap' }
  | { outcome: 'measure'; measure: Measure }
  | { outcome: 'fault'; fault: Pick<Fault, 'found' | 'expected'> }
  | { outcome: 'open'; typed: string }

export interface MeasureReading {
  rule: DecimalRule
  shop: ShopUnits
  /** The decimal sign is still asked: a number that may be either passes. */
  decimalOpen: boolean
}

/** Reads one cell of a column of numbers: the unit it names, else the column's. */
export function readMeasure(
  text: string,
  column: SheetColumn & { field: NumberField },
  reading: MeasureReading,
): MeasureRead {
  const { field, unitText } = column
  const found = JSON.stringify(text)
  const ratio = field === 'addedStrength' ? ratioOf(text) : null
  if (ratio !== null) return measured(ratio, canonicalUnit('percent'), { field, typed: text, column })
  const rule = reading.decimalOpen ? { sign: '.' as const, strict: false } : reading.rule
  const read = readCell(text, rule)
  if (read.kind === 'gap') return { outcome: 'gap' }
  if (read.kind === 'text') return { outcome: 'fault', fault: { found, expected: expectedNumber(reading.rule) } }
  const named = read.unitText === null ? column.unit : unitNamed(read.unitText, numberFields[field], reading.shop)
  const typed = read.unitText === null && unitText !== null ? `${text} ${unitText}` : text
  if (named === 'which-gallon') return { outcome: 'fault', fault: { found, expected: say('US gal or imperial gal') } }
  if (named === null && read.unitText !== null) {
    return {
      outcome: 'fault',
      fault: {
        found,
        expected: say('a number, alone or in {units}', { units: unitNames(numberFields[field]).join(', ') }),
      },
    }
  }
  if (named === null || (column.open && read.unitText === null)) return { outcome: 'open', typed }
  return measured(read.value, named, {
    field: field === 'level' && named.dimension === 'volume' ? 'volume' : field,
    typed,
    column,
  })
}

function measured(value: Value, unit: Unit, rest: Omit<Measure, 'value'>): MeasureRead {
  try {
    return { outcome: 'measure', measure: { ...rest, value: mapValue(value, unit.canonical) } }
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return {
      outcome: 'fault',
      fault: { found: JSON.stringify(rest.typed), expected: say('a possible value in {unit}', { unit: unit.name }) },
    }
  }
}

const expectedNumber = ({ sign, strict }: DecimalRule): string =>
  strict && sign !== null
    ? say('a number with "{sign}" as its decimal sign, or nothing', { sign })
    : say('a number, or nothing')

/** "1:20" is 1 part concentrate to 20 parts water, "1 in 20" 1 part in 20 parts of mix. */
function ratioOf(text: string): number | null {
  const found = /^1\s*(:|in)\s*(\d{1,4}(?:[.,]\d{1,2})?)$/i.exec(text)
  if (found === null) return null
  const parts = Number(found[2]!.replace(',', '.'))
  if (found[1] === ':') return percentFromWaterParts(parts)
  return parts >= 1 ? percentFromOneIn(parts) : null
}

/** The unit that a limit of the schema is in, for faults; '' where the number needs none. */
export function limitUnit(field: SheetField): string {
  const dimension = (numberFields as Partial<Record<SheetField, readonly (keyof typeof shown)[]>>)[field]?.[0]
  return dimension === undefined ? '' : shown[dimension]
}

const shown = {
  volume: ' L',
  length: ' mm',
  brix: ' °Brix',
  percent: ' %',
  ph: '',
  hardness: ' ppm',
  mass: ' mg/L',
  conductivity: ' mS/cm',
  temperature: ' °C',
  count: ' CFU/mL',
  hours: ' h',
} as const
