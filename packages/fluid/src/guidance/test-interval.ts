import type { Days } from '../quantities.ts'
import { requireRange } from '../require.ts'

export type TestInterval =
  | {
      outcome: 'every'
      days: Days
      /** Who sets it. */
      level: 'guidance' | 'shop'
      /** What the shop asked for where that was longer than guidance lets it be. */
      refused: Days | null
    }
  /** Nobody sets one. */
  | { outcome: 'none' }

/**
 * The days between two tests of one kind: the shop's own may be shorter than what guidance sets, never longer.
 *
 * @throws {RangeError} an interval under one day
 * @example testInterval({ guidance: 7, shop: 14 }) // every 7 days; 14 is refused
 */
export function testInterval({ guidance, shop }: { guidance: Days | null; shop: Days | null }): TestInterval {
  if (guidance !== null) requireRange('guidance', guidance, { min: 1 })
  if (shop !== null) requireRange('shop', shop, { min: 1 })
  if (guidance === null)
    return shop === null ? { outcome: 'none' } : { outcome: 'every', days: shop, level: 'shop', refused: null }
  if (shop !== null && shop < guidance) return { outcome: 'every', days: shop, level: 'shop', refused: null }
  return {
    outcome: 'every',
    days: guidance,
    level: 'guidance',
    refused: shop !== null && shop > guidance ? shop : null,
  }
}
