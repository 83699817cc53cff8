import { expect, test } from 'vitest'
import { markedByPours, marksEvery } from './marks.ts'

const pours = [
  { litres: 10, level: 80 },
  { litres: 10, level: 150 },
]

test('pours of known volume become a dip table', () => {
  expect(markedByPours(pours).table).toEqual([
    [0, 0],
    [80, 10],
    [150, 20],
  ])
})

test('a marking can begin above the floor, with something in it already', () => {
  expect(markedByPours(pours, { start: [20, 5] }).table).toEqual([
    [20, 5],
    [80, 15],
    [150, 25],
  ])
})

test('the doubt grows as the root of the number of pours', () => {
  expect(markedByPours(pours, { pourSd: 0.2 }).volumeSds).toEqual([0, 0.2, 0.2 * Math.SQRT2])
})

// Between 80 mm (10 L) and 150 mm (20 L) 15 L stand at 115 mm.
test('marks lie at the level of every step', () => {
  expect(marksEvery(markedByPours(pours).table, 5)).toEqual([
    [0, 0],
    [5, 40],
    [10, 80],
    [15, 115],
    [20, 150],
  ])
  expect(
    marksEvery(
      [
        [20, 4],
        [120, 24],
      ],
      10,
    ),
  ).toEqual([
    [10, 50],
    [20, 100],
  ])
})

test.each([
  ['pours', []],
  ['pours.0.litres', [{ litres: 0, level: 10 }]],
  ['pours.0.level', [{ litres: 1, level: 0 }]],
  [
    'pours.1.level',
    [
      { litres: 1, level: 10 },
      { litres: 1, level: 10 },
    ],
  ],
])('%s out of its range is refused by name', (name, bad) => {
  expect(() => markedByPours(bad)).toThrow(new RegExp(`^${name.replaceAll('.', '\\.')} is`))
})

test('other quantities out of their range are refused by name', () => {
  expect(() => markedByPours(pours, { pourSd: -1 })).toThrow(/^pourSd is -1/)
  expect(() => markedByPours(pours, { start: [0, -1] })).toThrow(/^start.1 is -1/)
  expect(() =>
    marksEvery(
      [
        [0, 0],
        [10, 5],
      ],
      0,
    ),
  ).toThrow(/^step is 0/)
})
