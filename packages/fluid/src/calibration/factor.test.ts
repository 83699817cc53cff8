import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type KnownMix, productFactor } from './factor.ts'

const mixes = (pairs: [number, number][]): KnownMix[] => pairs.map(([percent, brix]) => ({ percent, brix }))

function factorOf(pairs: [number, number][], throughZero?: boolean) {
  const found = productFactor(mixes(pairs), { throughZero })
  if (found.outcome !== 'factor') throw new Error(found.outcome)
  return found
}

test('the factor is percent per °Brix', () => {
  expect(
    factorOf([
      [4, 2.5],
      [8, 5],
      [12, 7.5],
    ]),
  ).toMatchObject({ factor: 1.6, intercept: 0, n: 3 })
})

test('the ends of its interval are the reciprocals of the slope’s', () => {
  // Σxy 10 + 40.8 + 84 = 134.8, Σx² 16 + 64 + 144 = 224: slope 0.601786
  // residuals 0.092857, 0.285714, −0.221429: squares 0.139286; / 2 = 0.069643; slopeSd √(0.069643/224) = 0.017633
  // t(95 %, 2) = 2.91999: slope 0.550299 to 0.653273
  const found = factorOf([
    [4, 2.5],
    [8, 5.1],
    [12, 7],
  ])
  expect(found.factor).toBeCloseTo(1 / 0.601786, 5)
  expect(found.residualSd).toBeCloseTo(Math.sqrt(0.069643), 5)
  expect(found.low90).toBeCloseTo(1 / 0.653273, 4)
  expect(found.high90).toBeCloseTo(1 / 0.550299, 4)
})

test('a single mix gives a factor and no notion of its doubt', () => {
  expect(factorOf([[8, 5]])).toMatchObject({ factor: 1.6, low90: null, high90: null, residualSd: null })
})

test('with an intercept the line need not pass through zero', () => {
  const found = factorOf(
    [
      [4, 3],
      [8, 5.5],
      [12, 8],
    ],
    false,
  )
  expect(found).toMatchObject({ factor: expect.closeTo(1.6, 12), intercept: expect.closeTo(0.5, 12) })
})

test('a zero that is off is named', () => {
  const off: [number, number][] = [
    [4, 3],
    [6, 4.24],
    [8, 5.5],
    [10, 6.76],
    [12, 8],
  ]
  expect(factorOf(off)).toMatchObject({ zero: { brix: expect.closeTo(0.5, 1), off: true }, curvature: { bent: false } })
  expect(
    factorOf([
      [4, 2.5],
      [6, 3.8],
      [8, 5],
      [10, 6.2],
    ]).zero,
  ).toMatchObject({ off: false })
})

test('a product that is no straight line is named, and by how much', () => {
  // brix = 0.7 x − 0.01 x²
  const bent = [2, 4, 6, 8, 10, 12].map((x): [number, number] => [x, 0.7 * x - 0.01 * x ** 2])
  expect(factorOf(bent).curvature).toMatchObject({ bent: true })
  const straight = [2, 4, 6, 8, 10, 12].map((x): [number, number] => [x, 0.6 * x])
  expect(factorOf(straight).curvature).toEqual({ bent: false, farthest: 0 })
})

test('too few different mixes tell nothing of a bend or a zero', () => {
  expect(
    factorOf([
      [8, 5],
      [8, 5.1],
      [8, 4.9],
    ]),
  ).toMatchObject({ curvature: null, zero: null })
})

test('readings that do not rise with the strength give no factor', () => {
  const flat = mixes([
    [4, 5],
    [8, 5],
    [12, 5],
  ])
  expect(productFactor(flat, { throughZero: false })).toEqual({ outcome: 'no-slope', slope: 0 })
  expect(productFactor(mixes([[8, 0]]))).toEqual({ outcome: 'no-slope', slope: 0 })
  const wild = mixes([
    [4, 9],
    [8, 1],
    [12, 0],
  ])
  expect(productFactor(wild)).toMatchObject({ outcome: 'no-slope' })
})

test.each<[string, [number, number][]]>([
  ['mixes.0.percent is 101', [[101, 5]]],
  [
    'mixes.1.brix is -1',
    [
      [8, 5],
      [8, -1],
    ],
  ],
  ['mixes is 0, expected at least 1 point off zero', []],
  ['mixes is 1, expected at least 1 point off zero', [[0, 0]]],
])('%s is refused', (message, pairs) => {
  expect(() => productFactor(mixes(pairs))).toThrow(message)
})

test('a finer scale of percent changes nothing but the factor', () => {
  const pairs = fc.array(
    fc.tuple(fc.double({ min: 1, max: 10, noNaN: true }), fc.double({ min: 1, max: 10, noNaN: true })),
    {
      minLength: 2,
      maxLength: 8,
    },
  )
  fc.assert(
    fc.property(pairs, (pairs) => {
      const [once, twice] = [mixes(pairs), mixes(pairs.map(([percent, brix]) => [2 * percent, brix]))].map((all) =>
        productFactor(all),
      )
      expect(twice!.outcome).toBe(once!.outcome)
      if (once?.outcome !== 'factor' || twice?.outcome !== 'factor') return
      expect(twice.factor / once.factor).toBeCloseTo(2, 9)
      expect(twice.low90! / once.low90!).toBeCloseTo(2, 9)
      expect(twice.residualSd).toBeCloseTo(once.residualSd!, 9)
    }),
  )
})
