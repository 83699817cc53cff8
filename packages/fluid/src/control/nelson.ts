import { requireRange } from '../require.ts'

/**
 * Eight tests for special causes, σ the standard deviation of single values:
 *
 * 1. one point more than 3 σ from the centre
 * 2. nine in a row on one side of it
 * 3. six in a row steadily rising or falling (tool wear, a bath running down)
 * 4. fourteen in a row going up and down by turns
 * 5. two of three more than 2 σ away on one side
 * 6. four of five more than 1 σ away on one side
 * 7. fifteen in a row within 1 σ (limits too wide, values made up)
 * 8. eight in a row more than 1 σ away, on either side
 */
export type NelsonRule = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8

export const nelsonRules: readonly NelsonRule[] = [1, 2, 3, 4, 5, 6, 7, 8]

export interface NelsonChart {
  centre: number
  /** Of single values; above 0, or 0 where they do not scatter: then tests 5 to 8 say nothing. */
  sd: number
  /** Which tests to run; all unless given. */
  rules?: readonly NelsonRule[] | undefined
}

/**
 * Where which test signals: at each point that completes a pattern, and at each that carries one on.
 *
 * Conventions where the tests leave a choice: a point on the centre is on neither side; equal neighbours neither rise nor fall; a point exactly 1, 2
 * or 3 σ away counts as within. In tests 5 and 6 the point itself is one of the two or four, and a chart's first points need not wait for the third
 * or fifth.
 *
 * Each test alone gives about 3 to 5 false signals in 1000 points, all together some 2 in 100: choose few.
 *
 * Source: L. S. Nelson, "The Shewhart Control Chart – Tests for Special Causes", J. Quality Technology 16 (1984) 237–239.
 *
 * @throws {RangeError} a value that is no number
 * @example nelsonSignals([0, 1, 4], { centre: 0, sd: 1 }) // [{ index: 2, rule: 1 }]
 */
export function nelsonSignals(
  values: readonly number[],
  { centre, sd, rules = nelsonRules }: NelsonChart,
): { index: number; rule: NelsonRule }[] {
  requireRange('centre', centre, {})
  requireRange('sd', sd, { min: 0 })
  for (const [index, value] of values.entries()) requireRange(`values.${index}`, value, {})
  const asked = nelsonRules.filter((rule) => rules.includes(rule) && (sd > 0 || rule < 5))
  const offsets = values.map((value) => value - centre)
  const steps = offsets.map((offset, index) => (index === 0 ? 0 : offset - offsets[index - 1]!))
  return offsets.flatMap((_, index) =>
    asked.filter((rule) => tests[rule]({ offsets, steps, sd }, index)).map((rule) => ({ index, rule })),
  )
}

/** Distances from the centre, steps from the point before (none leads to the first), and the measure of both. */
interface Series {
  offsets: readonly number[]
  steps: readonly number[]
  sd: number
}

const sides = [1, -1]

const tests: Record<NelsonRule, (series: Series, index: number) => boolean> = {
  1: ({ offsets, sd }, index) => Math.abs(offsets[index]!) > 3 * sd,
  2: ({ offsets }, index) => sides.some((side) => run(offsets, index, 9, (offset) => side * offset > 0)),
  3: ({ steps }, index) => sides.some((side) => run(steps, index, 5, (step) => side * step > 0)),
  4: ({ steps }, index) =>
    run(steps, index, 13, (step, k) => step !== 0 && (k === index - 12 || step * steps[k - 1]! < 0)),
  5: ({ offsets, sd }, index) => sides.some((side) => most(offsets, index, { of: 3, needed: 2, beyond: 2 * sd, side })),
  6: ({ offsets, sd }, index) => sides.some((side) => most(offsets, index, { of: 5, needed: 4, beyond: sd, side })),
  7: ({ offsets, sd }, index) => run(offsets, index, 15, (offset) => Math.abs(offset) <= sd),
  8: ({ offsets, sd }, index) => run(offsets, index, 8, (offset) => Math.abs(offset) > sd),
}

/** Whether the last `count` up to and with `index` all do. */
function run(
  numbers: readonly number[],
  index: number,
  count: number,
  does: (number: number, index: number) => boolean,
): boolean {
  const first = index - count + 1
  if (first < 0) return false
  for (let k = first; k <= index; k += 1) if (!does(numbers[k]!, k)) return false
  return true
}

/** Whether the point itself and `needed` of the last `of` in all lie beyond on one side. */
function most(
  offsets: readonly number[],
  index: number,
  { of, needed, beyond, side }: { of: number; needed: number; beyond: number; side: number },
): boolean {
  if (side * offsets[index]! <= beyond) return false
  const last = offsets.slice(Math.max(0, index - of + 1), index + 1)
  return last.filter((offset) => side * offset > beyond).length >= needed
}
