import { requireRange } from '../require.ts'

/** A value, and how much it counts. */
export interface Weighted {
  value: number
  /** Above 0. */
  weight: number
}

/**
 * The sequence nearest to the values (weighted least squares) that never falls: neighbours that fall are pooled into their mean until none do.
 *
 * Source: pool adjacent violators; R. E. Barlow et al., Statistical Inference under Order Restrictions (1972), chapter 1.
 *
 * @throws {RangeError} a value that is no number, a weight that is not above 0
 * @example monotoneFit([{ value: 1, weight: 1 }, { value: 3, weight: 1 }, { value: 2, weight: 1 }]) // [1, 2.5, 2.5]
 */
export function monotoneFit(values: readonly Weighted[]): number[] {
  const blocks: { value: number; weight: number; count: number }[] = []
  for (const [index, { value, weight }] of values.entries()) {
    requireRange(`values.${index}.value`, value, {})
    requireRange(`values.${index}.weight`, weight, { above: 0 })
    let block = { value, weight, count: 1 }
    while (blocks.length > 0 && blocks.at(-1)!.value >= block.value) {
      const last = blocks.pop()!
      const weights = last.weight + block.weight
      block = {
        value: (last.value * last.weight + block.value * block.weight) / weights,
        weight: weights,
        count: last.count + block.count,
      }
    }
    blocks.push(block)
  }
  return blocks.flatMap(({ value, count }) => Array<number>(count).fill(value))
}
