import { expect, test } from 'vitest'
import { limitsOf, ratiosOf } from './limits.ts'
import type { summarise } from './measure.ts'

type Result = ReturnType<typeof summarise>

const names = ['', '+7', '+14'].flatMap((days) => ['concentration', 'volume', 'hardness'].map((name) => name + days))
/** A peer with the same error and coverage everywhere. */
const result = (name: string, error: number, coverage = 0.9, found = 9): Result =>
  ({
    name,
    figures: Object.fromEntries(
      [...names, 'evaporation', 'carryOff'].map((figure) => [
        figure,
        { trimmedRmse: error, medianErrorPercent: 10 * error, coverage },
      ]),
    ),
    doubts: { misreads: { found, of: 10 }, missing: { found, of: 10 }, falseASumpAndHalfYear: 0.1 },
  }) as unknown as Result

test('a ratio below 1 is nearer to the truth', () => {
  expect(ratiosOf(result('a', 0.4), result('b', 0.8))).toMatchObject({
    beside: 'b',
    now: 0.5,
    in14: 0.5,
    carryOff: 0.5,
  })
})

test('an estimator that is good enough misses nothing, on a limit it still meets it', () => {
  expect(limitsOf(result('a', 0.5), result('plain', 0.6), result('last', 1)).filter(({ met }) => !met)).toEqual([])
})

test('what is not reached is named', () => {
  const missed = (...results: Parameters<typeof limitsOf>) =>
    limitsOf(...results)
      .filter(({ met }) => !met)
      .map(({ what }) => what)
  // 0.51 of the last reading now; 0.51 of 0.55 is 0.927 of the plain filter: too much in 7 days, enough now.
  expect(missed(result('a', 0.51), result('plain', 0.55), result('last', 1))).toEqual([
    'concentration in 7 days, over the plain filter',
    'concentration now, over the last reading',
  ])
  // 96 % is more than honest intervals of the present hold; nothing is wrong with the others.
  expect(missed(result('a', 0.1, 0.96), result('plain', 1), result('last', 1))).toEqual([
    '90 % intervals of concentration hold',
  ])
  expect(missed(result('a', 0.1, 0.9, 7), result('plain', 1), result('last', 1))).toEqual(['misreads found'])
})
