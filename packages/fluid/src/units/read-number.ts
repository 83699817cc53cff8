/** How to take the signs in a typed number. */
export interface NumberReading {
  /** The decimal sign of whoever typed it, where known; it only settles what could be read both ways. */
  decimal?: ',' | '.' | undefined
  /** The largest value that makes sense; a reading above it is no possible reading of an ambiguous number. */
  largest?: number | undefined
}

/** Either the number, or what is wrong with it. */
export type NumberRead = { value: number } | { fault: string }

const spaces = /[\u00a0\u2007\u2009\u202f]/g
const powerOfTen = /^(?:(.*\d)(?:[eE]|\s*[x×]\s*10\^)|10\^)([+-]?\d{1,3})$/

/**
 * Reads a number as a person typed it: decimal comma or point, thousands set off by comma, point, space or apostrophe,
 * a power of ten ("1e4", "2 x 10^4").
 *
 * A single sign before exactly three digits ("1,234") is a decimal sign or a thousands sign; where both are possible and
 * nothing settles it, it is a fault, never a guess. "0,234", "1234,567", "7,5" and "1,234.5" can only be read one way.
 *
 * @example readNumber('7,5') // { value: 7.5 }
 */
export function readNumber(
  text: string,
  { decimal, largest = Number.POSITIVE_INFINITY }: NumberReading = {},
): NumberRead {
  const trimmed = text.trim().replaceAll('−', '-')
  const power = powerOfTen.exec(trimmed)
  const mantissa = power === null ? trimmed : (power[1] ?? '1')
  const body = mantissa.replace(/^[+-]/, '').replace(spaces, ' ').replaceAll('’', "'")
  const sign = mantissa.startsWith('-') ? '-' : ''

  const readings = (['.', ','] as const).flatMap((point) => {
    const digits = digitsWith(body, point)
    const value = digits === null ? Number.NaN : Number(`${sign}${digits}e${power?.[2] ?? 0}`)
    return Number.isFinite(value) ? [{ point, value }] : []
  })
  const [first, second] = readings
  if (first === undefined) return { fault: `found "${text.trim()}", expected a number such as 7.5 or 7,5` }
  if (second === undefined || second.value === first.value) return { value: first.value }

  const chosen = readings.find(({ point }) => point === decimal)
  if (chosen !== undefined) return { value: chosen.value }
  const possible = readings.filter(({ value }) => Math.abs(value) <= largest)
  if (possible.length === 1) return { value: possible[0]!.value }
  return {
    fault: `found "${text.trim()}", which can be read as ${first.value} or as ${second.value}; expected a number that can be read one way only`,
  }
}

/** The number in plain digits and a point, if `point` is the decimal sign; null where the text is no number that way. */
function digitsWith(body: string, point: ',' | '.'): string | null {
  const parts = body.split(point)
  const [whole = '', fraction] = parts
  if (parts.length > 2 || (fraction !== undefined && !/^\d+$/.test(fraction))) return null
  const digits = whole === '' && fraction !== undefined ? '0' : ungrouped(whole, point === '.' ? ',' : '.')
  if (digits === null) return null
  return fraction === undefined ? digits : `${digits}.${fraction}`
}

/** Digits without their thousands signs: plain, or in threes set off by one and the same sign. */
function ungrouped(whole: string, sign: ',' | '.'): string | null {
  if (/^\d+$/.test(whole)) return whole
  const groups = /^[1-9]\d{0,2}(?:([,. '])\d{3})(?:\1\d{3})*$/.exec(whole)
  const used = groups?.[1]
  if (used === undefined || ((used === ',' || used === '.') && used !== sign)) return null
  return whole.replaceAll(used, '')
}
