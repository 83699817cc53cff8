/**
 * A UUID of version 7 for an entry: the time it was written down, then chance from the stream given.
 *
 * Source: RFC 9562 §5.7: 48 bits of Unix milliseconds, version 7, 12 random bits, variant 10, 62 random bits.
 *
 * @throws {RangeError} a time that does not fit 48 bits
 */
export function entryId(milliseconds: number, bits: () => number): string {
  if (!(Number.isInteger(milliseconds) && milliseconds >= 0 && milliseconds < 2 ** 48)) {
    throw new RangeError(`milliseconds must be whole, from 0 and below 2^48, not ${milliseconds}`)
  }
  const time = milliseconds.toString(16).padStart(12, '0')
  const a = (0x7000 | (bits() >>> 20)).toString(16)
  const b = (0x8000 | (bits() >>> 18)).toString(16)
  const c = [bits() >>> 16, bits()].map((word, i) => word.toString(16).padStart(i === 0 ? 4 : 8, '0')).join('')
  return `${time.slice(0, 8)}-${time.slice(8)}-${a}-${b}-${c}`
}
