/** The ends a quantity must lie between; a missing end is open. */
export interface Range {
  min?: number
  max?: number
  /** The quantity must be greater than this. */
  above?: number
}

/**
 * Stops a mistake of the calling code: a quantity that is not a number or lies outside its range.
 *
 * @throws {RangeError} naming the quantity, what was found and what was expected
 * @example requireRange('volume', -1, { min: 0 }) // RangeError: volume is -1, expected at least 0
 */
export function requireRange(name: string, value: number, { min, max, above }: Range): void {
  const fits =
    Number.isFinite(value) &&
    (min === undefined || value >= min) &&
    (max === undefined || value <= max) &&
    (above === undefined || value > above)
  if (!fits) throw new RangeError(`${name} is ${value}, expected ${sayRange({ min, max, above })}`)
}

function sayRange({ min, max, above }: { [K in keyof Range]: number | undefined }): string {
  const ends = [
    above === undefined ? '' : `above ${above}`,
    min === undefined ? '' : `at least ${min}`,
    max === undefined ? '' : `at most ${max}`,
  ].filter((end) => end !== '')
  return ends.length === 0 ? 'a number' : ends.join(' and ')
}
