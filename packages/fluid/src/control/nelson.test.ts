import { expect, test } from 'vitest'
import { type NelsonRule, nelsonSignals } from './nelson.ts'

const chart = { centre: 0, sd: 1 }
const at = (values: readonly number[], rule: NelsonRule) =>
  nelsonSignals(values, { ...chart, rules: [rule] }).map(({ index }) => index)
const repeat = (count: number, of: (index: number) => number) => Array.from({ length: count }, (_, index) => of(index))
const zigzag = (count: number) => repeat(count, (index) => (index % 2 === 0 ? 0.1 : -0.1))

test.each<[string, NelsonRule, number[], number[]]>([
  ['a point beyond 3 sd', 1, [0, 3.01, 0, -3.01], [1, 3]],
  ['not a point on 3 sd', 1, [3, -3], []],
  ['nine on one side', 2, repeat(9, () => -0.1), [8]],
  ['not eight', 2, repeat(8, () => 0.1), []],
  ['not nine with one on the centre', 2, repeat(9, (index) => (index === 4 ? 0 : 0.1)), []],
  ['not nine of which one is on the other side', 2, repeat(9, (index) => (index === 8 ? -0.1 : 0.1)), []],
  ['six that rise', 3, [0, 0.1, 0.2, 0.3, 0.4, 0.5], [5]],
  ['six that fall, and a seventh', 3, [0.5, 0.4, 0.3, 0.2, 0.1, 0, -0.1], [5, 6]],
  ['not five', 3, [0, 0.1, 0.2, 0.3, 0.4], []],
  ['not six of which two are equal', 3, [0, 0.1, 0.2, 0.2, 0.3, 0.4], []],
  ['fourteen up and down', 4, zigzag(14), [13]],
  ['not thirteen', 4, zigzag(13), []],
  ['not fourteen of which two are equal', 4, [...zigzag(13), 0.1], []],
  ['two of three beyond 2 sd on one side', 5, [2.1, 0, 2.1], [2]],
  ['two at the very start', 5, [-2.1, -2.1], [1]],
  ['not two of four', 5, [2.1, 0, 0, 2.1], []],
  ['not on either side', 5, [2.1, -2.1, 0], []],
  ['not on 2 sd', 5, [2, 2, 2], []],
  ['not at a third point that is back inside', 5, [2.1, 2.1, 0], [1]],
  ['four of five beyond 1 sd on one side', 6, [1.1, 1.1, 0, 1.1, 1.1], [4]],
  ['not three', 6, [1.1, 1.1, 1.1], []],
  ['not four of six', 6, [1.1, 1.1, 0, 0, 1.1, 1.1], []],
  ['not four on both sides', 6, [1.1, 1.1, -1.1, -1.1, -1.1], []],
  ['fifteen within 1 sd', 7, repeat(15, (index) => (index % 2 === 0 ? 1 : -1)), [14]],
  ['not fourteen', 7, repeat(14, () => 0.5), []],
  ['not with one outside', 7, repeat(15, (index) => (index === 7 ? 1.1 : 0)), []],
  ['eight beyond 1 sd on either side', 8, repeat(8, (index) => (index % 2 === 0 ? 1.1 : -1.1)), [7]],
  ['not seven', 8, repeat(7, () => 1.1), []],
  ['not on 1 sd', 8, repeat(8, (index) => (index === 3 ? 1 : 1.1)), []],
])('%s (test %d)', (_, rule, values, signals) => {
  expect(at(values, rule)).toEqual(signals)
})

test('tests count from the centre and in standard deviations given', () => {
  expect(nelsonSignals([10, 16.1], { centre: 10, sd: 2, rules: [1] })).toEqual([{ index: 1, rule: 1 }])
  expect(nelsonSignals([10, 15.9], { centre: 10, sd: 2, rules: [1] })).toEqual([])
})

test('all eight run unless some are asked for, in order of points and rules', () => {
  expect(nelsonSignals([2.5, 4], chart)).toEqual([
    { index: 1, rule: 1 },
    { index: 1, rule: 5 },
  ])
})

test('values that do not scatter give no signal of nearness', () => {
  expect(
    nelsonSignals(
      repeat(20, () => 5),
      { centre: 5, sd: 0 },
    ),
  ).toEqual([])
})

test('a value that is no number is refused', () => {
  expect(() => nelsonSignals([1, Number.NaN], chart)).toThrow('values.1 is NaN')
  expect(() => nelsonSignals([1], { centre: 0, sd: -1 })).toThrow('sd is -1')
})
