import type { Value } from '../../schema/values.ts'
import type { DecimalRule } from './decimals.ts'
import { readNumber } from './numbers.ts'

/** What a cell of a column of numbers holds. */
export type CellReading =
  /** Nothing was read. */
  | { kind: 'gap' }
  /** A figure or a class of figures, in the unit the cell names, if it names one. */
  | { kind: 'value'; value: Value; unitText: string | null }
  /** Words where a number belongs. */
  | { kind: 'text' }

/** What people write where they read nothing; common practice. */
const gaps = new Set([
  '',
  '-',
  '–',
  '—',
  '--',
  '---',
  './.',
  '/',
  'n/a',
  '#n/a',
  'na',
  'n.a.',
  'n. a.',
  'n.m.',
  'n/d',
  'nd',
  'n.d.',
  's/d',
  'k.a.',
  'k. a.',
  'none',
  'nil',
  'null',
  'keine',
  'kein',
])

export const isGap = (text: string): boolean => text === '' || (text.length <= 5 && gaps.has(text.toLowerCase()))

const below = /^(?:<=?|≤|below|under|less than|unter|kleiner als|weniger als|menos de)\s*(?=[\d.,])/i
const atLeast = /^(?:>=?|≥|above|over|more than|at least|über|größer als|mehr als|mindestens|más de)\s*(?=[\d.,])/i
const range = /^(.*?[\d⁰¹²³⁴⁵⁶⁷⁸⁹][^\d]*?)\s*(?:-|–|—|\.\.\.?|…|\sto\s|\sbis\s|\sa\s)\s*(?=[\d.,])(.*)$/i

/**
 * Reads a cell of a column of numbers. Strips and slides name classes: "<25", ">1000", "1000+", "25-50".
 *
 * @example readCell('25–50 ppm', rule) // { kind: 'value', value: { low: 25, high: 50 }, unitText: 'ppm' }
 */
export function readCell(text: string, rule: DecimalRule): CellReading {
  if (isGap(text)) return { kind: 'gap' }
  const bound = boundOf(text, rule)
  if (bound !== null) return bound
  const single = valueFrom(text, rule, asIs)
  if (single.kind === 'value' && (single.unitText === null || !/^[-–—.…]|\d/.test(single.unitText))) {
    return single.unitText === '+' ? valueFrom(text.slice(0, -1), rule, (value) => ({ atLeast: value })) : single
  }
  return rangeOf(text, rule) ?? (single.kind === 'value' ? single : { kind: 'text' })
}

/** "<25" and ">1000"; null where neither sign stands there. */
function boundOf(text: string, rule: DecimalRule): CellReading | null {
  if (/^\d/.test(text)) return null
  const under = below.exec(text)
  if (under !== null) return valueFrom(text.slice(under[0].length), rule, (value) => ({ below: value }))
  const over = atLeast.exec(text)
  return over === null ? null : valueFrom(text.slice(over[0].length), rule, (value) => ({ atLeast: value }))
}

const asIs = (value: number): Value => value

function valueFrom(text: string, rule: DecimalRule, make: (value: number) => Value): CellReading {
  const number = readNumber(text, rule)
  if (number === null) return { kind: 'text' }
  return { kind: 'value', value: make(number.value), unitText: number.rest === '' ? null : number.rest }
}

function rangeOf(text: string, rule: DecimalRule): CellReading | null {
  const found = range.exec(text)
  if (found === null) return null
  const [low, high] = [readNumber(found[1]!, rule), readNumber(found[2]!, rule)]
  if (low === null || high === null) return null
  if (low.rest !== '' && low.rest !== high.rest) return null
  return { kind: 'value', value: { low: low.value, high: high.value }, unitText: high.rest === '' ? null : high.rest }
}

/** The same value with every figure of it changed. */
export function mapValue(value: Value, change: (figure: number) => number): Value {
  if (typeof value === 'number') return change(value)
  if ('below' in value) return { below: change(value.below) }
  if ('atLeast' in value) return { atLeast: change(value.atLeast) }
  return { low: change(value.low), high: change(value.high) }
}
