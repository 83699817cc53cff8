import { OutOfRange } from '../require.ts'

/** Whole hundredths of the shop's currency, also where the currency has no coins of that size. */
export type Cents = number
/** Millionths of a cent: fine enough for the water in a bucket, whole numbers so that a sum does not depend on its order. */
export type MicroCents = number

const microCentsPerUnit = 100_000_000
const microCentsPerCent = 1_000_000

/**
 * What an amount costs, as whole millionths of a cent; null beyond all measure (over some 90 million units of currency), where sums would no
 * longer be exact.
 *
 * @throws {RangeError} an amount or a price that is no number or below 0
 * @example microCents(12, 0.004) // 4 800 000: 4.8 cents
 */
export function microCents(amount: number, price: number): MicroCents | null {
  for (const [name, value] of [
    ['amount', amount],
    ['price', price],
  ] as const) {
    if (!(value >= 0)) throw new OutOfRange(name, value, 'at least 0')
  }
  const cost = Math.round(amount * price * microCentsPerUnit)
  return Number.isSafeInteger(cost) ? cost : null
}

/** The one place where money is rounded: a sum of millionths to the cent, half up. */
export const toCents = (sum: MicroCents): Cents => Math.round(sum / microCentsPerCent)

/**
 * Parts rounded to whole steps so that they add up to their rounded sum: those with the largest remainders are rounded up, the first of two
 * equal ones. For sentences, whose reader adds up what is said.
 *
 * Source: method of the largest remainder (Hamilton).
 *
 * @throws {RangeError} a part below 0, a step that is not above 0
 * @example wholeParts([150, 150, 100], 100) // [200, 100, 100]
 */
export function wholeParts(parts: readonly Cents[], step: Cents): Cents[] {
  if (!(step > 0)) throw new OutOfRange('step', step, 'above 0')
  for (const [index, part] of parts.entries()) {
    if (!(part >= 0)) throw new OutOfRange(`parts.${index}`, part, 'at least 0')
  }
  const total = Math.round(parts.reduce((sum, part) => sum + part, 0) / step)
  const floors = parts.map((part) => Math.floor(part / step))
  const missing = total - floors.reduce((sum, part) => sum + part, 0)
  const byRemainder = parts
    .map((part, index) => ({ index, remainder: part / step - floors[index]! }))
    .sort((a, b) => b.remainder - a.remainder || a.index - b.index)
  for (const { index } of byRemainder.slice(0, missing)) floors[index]! += 1
  return floors.map((part) => part * step)
}
