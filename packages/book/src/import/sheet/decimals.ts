import { say } from '@sumpbook/fluid'
import type { Question } from '../sheet-types.ts'

export type DecimalSign = ',' | '.'

/**
 * What one number's text says of its signs: that the comma or the point is the decimal one, nothing (`none`: no sign at
 * all), or that it may be either (`either`: 1,234 and 1.234).
 */
export type SignSaid = DecimalSign | 'none' | 'either'

/**
 * @example signSaid('7,5') // ','
 * @example signSaid('1,234') // 'either'
 */
export function signSaid(digits: string): SignSaid {
  const comma = digits.lastIndexOf(',')
  const point = digits.lastIndexOf('.')
  if (comma === -1 && point === -1) return 'none'
  if (comma !== -1 && point !== -1) return comma > point ? ',' : '.'
  const sign = comma === -1 ? '.' : ','
  const parts = digits.split(sign)
  const grouped =
    parts.length > 1 && /^[1-9]\d{0,2}$/.test(parts[0]!) && parts.slice(1).every((part) => /^\d{3}$/.test(part))
  if (parts.length > 2) return grouped ? other(sign) : sign
  return grouped ? 'either' : sign
}

export const other = (sign: DecimalSign): DecimalSign => (sign === ',' ? '.' : ',')

/** What all the sheet's numbers say together. */
export interface DecimalEvidence {
  said: Record<SignSaid, number>
  /** One that may be either, for the question; with a comma first. */
  example: string | null
  commaExample: string | null
}

export const noDecimals = (): DecimalEvidence => ({
  said: { ',': 0, '.': 0, none: 0, either: 0 },
  example: null,
  commaExample: null,
})

/** Takes one more cell into account; every run of digits in it counts. */
export function weighDecimal(evidence: DecimalEvidence, text: string): void {
  if (/^\d+[.,]\d{1,2}$/.test(text)) {
    evidence.said[text.includes(',') ? ',' : '.'] += 1
    return
  }
  for (const [digits] of text.matchAll(/\d[\d.,]*\d/g)) {
    const said = signSaid(digits)
    evidence.said[said] += 1
    if (said !== 'either') continue
    evidence.example ??= digits
    if (digits.includes(',')) evidence.commaExample ??= digits
  }
}

/** How the sheet's numbers are read. */
export interface DecimalRule {
  /** The decimal sign; null where no number needs it, or where both stand and each number tells by itself. */
  sign: DecimalSign | null
  /** Whether a number that tells the other sign by itself is a fault: a person said which one it is. */
  strict: boolean
}

/**
 * The decimal sign: what a person said, else the one that the sheet's numbers allow. A semicolon between the cells goes
 * with a decimal comma, since that is why spreadsheet programs use it. A question where 1,234 may be either.
 */
export function settleDecimals(
  { said, example, commaExample }: DecimalEvidence,
  { told, delimiter }: { told: DecimalSign | undefined; delimiter: string | null },
): { rule: DecimalRule; question: Question | null; warning: string | null } {
  if (told !== undefined) return { rule: { sign: told, strict: true }, question: null, warning: null }
  const settled = (sign: DecimalSign | null, warning: string | null = null) => ({
    rule: { sign, strict: false },
    question: null,
    warning,
  })
  const commas = said[','] > 0 || (delimiter === ';' && commaExample !== null)
  const points = said['.'] > 0
  if (commas !== points) return settled(commas ? ',' : '.')
  if (said.either > 0) {
    const question = {
      pointer: '/decimal',
      question: say('Which sign is the decimal one? {example} may be {large} or {small}.', {
        example: example!,
        ...readings(example!),
      }),
      choices: [',', '.'],
    }
    return { rule: { sign: null, strict: false }, question, warning: null }
  }
  return settled(
    null,
    commas ? say('Both "7,5" and "7.5" are used as decimal signs; each number was read by itself.') : null,
  )
}

function readings(example: string) {
  return { large: example.replace(/[.,]/g, ''), small: String(Number(example.replace(',', '.'))) }
}
