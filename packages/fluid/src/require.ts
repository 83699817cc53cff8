/** The ends a quantity must lie between; a missing end is open. */
export interface Range {
  min?: number | undefined
  max?: number | undefined
  /** The quantity must be greater than this. */
  above?: number | undefined
}

/** A quantity outside its range; edges tell a person which one, what was found and what was expected. */
export class OutOfRange extends RangeError {
  readonly quantity: string
  readonly found: number
  readonly expected: string

  constructor(quantity: string, found: number, expected: string) {
    super(`${quantity} is ${found}, expected ${expected}`)
    this.name = 'OutOfRange'
    this.quantity = quantity
    this.found = found
    this.expected = expected
  }
}

/**
 * Stops a mistake of the calling code: a quantity that is not a number or lies outside its range.
 *
 * @throws {OutOfRange} naming the quantity, what was found and what was expected
 * @example requireRange('volume', -1, { min: 0 }) // RangeError: volume is -1, expected at least 0
 */
export function requireRange(name: string, value: number, range: Range): void {
  const { min, max, above } = range
  const fits =
    Number.isFinite(value) &&
    (min === undefined || value >= min) &&
    (max === undefined || value <= max) &&
    (above === undefined || value > above)
  if (!fits) throw new OutOfRange(name, value, sayRange(range))
}

function sayRange({ min, max, above }: Range): string {
  const ends = [
    above === undefined ? '' : `above ${above}`,
    min === undefined ? '' : `at least ${min}`,
    max === undefined ? '' : `at most ${max}`,
  ].filter((end) => end !== '')
  return ends.length === 0 ? 'a number' : ends.join(' and ')
}
