/**
 * The strengths of a cart are a grouping of weighted points on a line.
 *
 * Groupings: the test values of the R package Ckmeans.1d.dp (H. Wang, M. Song), tests/testthat/test_Ckmeans.1d.dp.R, and of the package
 * simple-statistics, both read; tolerance 1e-9 of the spread. A strength must lie between 0 and 100, so every series is brought there by a factor
 * and a shift, which leave the groups as they are; a weight w is a pour of √w parts of its sump. Faults found in the reference: none.
 *
 * By hand: a weighted mean, as noted beside the case.
 */
import { expect, test } from 'vitest'
import { type PremixNeed, premix } from '../packages/fluid/src/index.ts'

/** Groups of values on a line: how many points each stands for, its centre and the squares within it. */
function groups(values: readonly number[], k: number, weights: readonly number[] = values.map(() => 1)) {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const scale = 100 / (high - low)
  const heaviest = Math.max(...weights)
  const needs: PremixNeed[] = values.map((value, i) => ({
    sump: String(i),
    strength: Math.min(100, (value - low) * scale),
    volume: 100 * Math.sqrt(weights[i]! / heaviest),
    sumpVolume: 100,
  }))
  const { batches, errors } = premix(needs, k)
  return batches.map(({ strength, sumps }) => {
    const members = sumps.map(Number)
    const size = members.reduce((sum, i) => sum + weights[i]!, 0)
    const squares = members.reduce((sum, i) => sum + heaviest * (errors[i]!.error / scale) ** 2, 0)
    return { size, centre: low + strength / scale, squares, members }
  })
}

interface Grouping {
  values: number[]
  k: number
  weights?: number[]
  sizes: number[]
  centres: number[]
  squares: number[]
}

const published: Grouping[] = [
  { values: [-1, 2, -1, 2, 4, 5, 6, -1, 2, -1], k: 3, sizes: [4, 3, 3], centres: [-1, 2, 5], squares: [0, 0, 2] },
  {
    values: [-1, 2, 4, 5, 6],
    weights: [4, 3, 1, 1, 1],
    k: 3,
    sizes: [4, 3, 3],
    centres: [-1, 2, 5],
    squares: [0, 0, 2],
  },
  {
    values: [-0.9, 1, 1.1, 1.9, 2, 2.1],
    weights: [3, 1, 2, 2, 1, 1],
    k: 3,
    sizes: [3, 3, 4],
    centres: [-0.9, (1 + 2.2) / 3, (3.8 + 2 + 2.1) / 4],
    // by hand: 1 · 0.0666667² + 2 · 0.0333333²; 2 · 0.075² + 0.025² + 0.125²
    squares: [0, 0.02 / 3, 0.0275],
  },
  { values: [3, 2, -5.4, 0.1], k: 4, sizes: [1, 1, 1, 1], centres: [-5.4, 0.1, 2, 3], squares: [0, 0, 0, 0] },
  { values: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10], k: 2, sizes: [5, 5], centres: [3, 8], squares: [10, 10] },
  { values: [3, 3, 3, 3, 1, 1, 1, 2, 2, 2], k: 3, sizes: [3, 3, 4], centres: [1, 2, 3], squares: [0, 0, 0] },
  {
    values: [-3, 2.2, -6, 7, 9, 11, -6.3, 75, 82.6, 32.3, -9.5, 62.5, 7, 95.2],
    k: 8,
    sizes: [3, 2, 4, 1, 1, 1, 1, 1],
    centres: [-7.266666667, -0.4, 8.5, 32.3, 62.5, 75, 82.6, 95.2],
    squares: [7.526666667, 13.52, 11, 0, 0, 0, 0, 0],
  },
  {
    values: [3.5, 3.6, 3.7, 3.1, 1.1, 0.9, 0.8, 2.2, 1.9, 2.1],
    k: 3,
    sizes: [3, 3, 4],
    centres: [0.933333333, 2.066666667, 3.475],
    squares: [0.0466666667, 0.0466666667, 0.2075],
  },
  {
    values: Array.from({ length: 21 }, (_, i) => Math.cos(i - 10)),
    k: 2,
    sizes: [12, 9],
    centres: [-0.6592474631, 0.6751193405],
    squares: [1.05647931, 0.6232976959],
  },
  {
    // density of the gamma distribution of shape 2 and rate 1 at 1, 1.5, … 10
    values: Array.from({ length: 19 }, (_, i) => (1 + i / 2) * Math.exp(-1 - i / 2)),
    k: 3,
    sizes: [13, 3, 3],
    centres: [0.01702193495, 0.15342151455, 0.32441508262],
    squares: [0.006126754998, 0.004977009034, 0.00488330512],
  },
]

test.each(published)('the best $k groups of $values are of $sizes points about $centres', (grouping) => {
  const { values, k, weights, sizes, centres, squares } = grouping
  const found = groups(values, k, weights)
  const spread = Math.max(...values) - Math.min(...values)
  expect(found.map(({ size }) => size)).toEqual(sizes)
  for (const [index, group] of found.entries()) {
    expect(Math.abs(group.centre - centres[index]!)).toBeLessThan(1e-9 * spread + 1e-9)
    expect(Math.abs(group.squares - squares[index]!)).toBeLessThan(1e-8 * spread + 1e-9)
  }
})

test('which point is in which of eight groups is as published', () => {
  const values = [-3, 2.2, -6, 7, 9, 11, -6.3, 75, 82.6, 32.3, -9.5, 62.5, 7, 95.2]
  const labels = [2, 2, 1, 3, 3, 3, 1, 6, 7, 4, 1, 5, 3, 8]
  const found = groups(values, 8)
  expect(values.map((_, i) => 1 + found.findIndex(({ members }) => members.includes(i)))).toEqual(labels)
})

test.each<[number[], number, number[][]]>([
  [
    [64.64249127327881, 64.64249127328245, 57.79216426169771],
    2,
    [[57.79216426169771], [64.64249127327881, 64.64249127328245]],
  ],
  [[3, 2, 3, 5, 2, 1], 3, [[1, 2, 2], [3, 3], [5]]],
  [[0, 3, 4], 2, [[0], [3, 4]]],
  [[-3, 0, 4], 2, [[-3, 0], [4]]],
])('%j in %d groups is %j', (values, k, expected) => {
  const found = groups(values, k).map(({ members }) => members.map((i) => values[i]!).sort((a, b) => a - b))
  expect(found).toEqual(expected)
})

test('one strength for a mill of 100 L and a lathe of 400 L is the mean weighted by the square of the share poured', () => {
  // 20 L of 100 at 4 %, 20 L of 400 at 8 %: weights 0.04 and 0.0025; (0.16 + 0.02) / 0.0425 = 4.2353; misses 0.0471 and −0.1882
  const { batches, errors, worst } = premix(
    [
      { sump: 'mill', volume: 20, strength: 4, sumpVolume: 100 },
      { sump: 'lathe', volume: 20, strength: 8, sumpVolume: 400 },
    ],
    1,
  )
  expect(batches[0]).toMatchObject({ strength: expect.closeTo(4.2353, 4), volume: 40 })
  expect(errors.map(({ error }) => error)).toEqual([expect.closeTo(0.0471, 4), expect.closeTo(-0.1882, 4)])
  expect(worst).toBeCloseTo(0.1882, 4)
})
