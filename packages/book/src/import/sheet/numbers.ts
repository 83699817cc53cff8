import { readNumber as readTyped } from '@sumpbook/fluid'
import { type DecimalRule, signSaid } from './decimals.ts'

/** A number of a cell with what stands behind it. */
export interface NumberText {
  value: number
  /** Text after the number, such as a unit; '' without any. */
  rest: string
}

/** A number that ends in a digit, a power of ten included, then anything. */
const numberThenRest =
  /^(10\^[+-]?\d+|[+\-−]?\s?[\d.,](?:[\d.,'’\s]*\d)?(?:(?:[eE]|\s*x\s*10\^)\+?\d+(?![\d\p{L}]))?)\s*(.*)$/su
const timesTen = /(\d)\s*[x×*·]\s*10\s*(?:\^|\*\*)\s*/gi
const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const raised = /10([⁰¹²³⁴⁵⁶⁷⁸⁹]+)/g

/**
 * Reads the number that a text begins with: "7,5", "1.234,5 L", "1e5", "10^5", "5×10³"; null where it begins with none,
 * or with one whose signs the rule does not allow.
 */
export function readNumber(text: string, rule: DecimalRule): NumberText | null {
  const simple = simpleNumber(text, rule)
  if (simple !== undefined) return simple === null ? null : { value: simple, rest: '' }
  const found = numberThenRest.exec(withPlainPowers(text.trim()))
  if (found === null) return null
  const digits = found[1]!.replace(/^([+\-−])\s/, '$1')
  if (rule.strict && contradicts(digits, rule)) return null
  const read = readTyped(digits, rule.sign === null ? {} : { decimal: rule.sign })
  return 'fault' in read ? null : { value: read.value, rest: found[2]!.trim() }
}

const whole = /^\d{1,15}$/
const oneOrTwoDecimals = /^\d{1,9}([.,])\d{1,2}$/

/** Nearly every cell is a few digits that can be read one way only; undefined for the others. */
function simpleNumber(text: string, { sign, strict }: DecimalRule): number | null | undefined {
  if (whole.test(text)) return Number(text)
  if (!oneOrTwoDecimals.test(text)) return undefined
  const comma = text.includes(',')
  if (strict && sign !== (comma ? ',' : '.')) return null
  return Number(comma ? text.replace(',', '.') : text)
}

/** "10⁵" and "5 · 10^5" in the spelling that numbers are read in. */
function withPlainPowers(text: string): string {
  if (!/[x×*·⁰¹²³⁴⁵⁶⁷⁸⁹^]/i.test(text)) return text
  return text
    .replace(raised, (_, power: string) => `10^${[...power].map((sign) => superscripts.indexOf(sign)).join('')}`)
    .replace(/\*\*/g, '^')
    .replace(timesTen, '$1 x 10^')
}

function contradicts(digits: string, { sign }: DecimalRule): boolean {
  const said = signSaid(digits.replace(/[^\d.,].*$/s, ''))
  return (said === ',' || said === '.') && said !== sign
}
