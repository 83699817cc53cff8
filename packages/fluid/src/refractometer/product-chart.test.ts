import fc from 'fast-check'
import { expect, test } from 'vitest'
import { brixFromChart, type ProductChart, percentFromChart } from './product-chart.ts'

const chart: ProductChart = [
  [0, 0],
  [2, 3],
  [4, 7],
  [6, 12],
]

/** Any chart that rises: steps of its own from a start of its own. */
const anyChart = fc
  .array(fc.tuple(fc.double({ min: 0.1, max: 9, noNaN: true }), fc.double({ min: 0.1, max: 9, noNaN: true })), {
    minLength: 2,
    maxLength: 10,
  })
  .map((steps): ProductChart => {
    let [brix, percent] = [0, 0]
    return steps.map(([right, up]) => {
      ;[brix, percent] = [brix + right, percent + up]
      return [brix, percent] as const
    })
  })
const share = fc.double({ min: 0, max: 1, noNaN: true })
const place = (points: ProductChart, part: number) => {
  const [low, high] = [points[0]![0], points.at(-1)![0]]
  return Math.min(high, low + part * (high - low))
}
const percentAt = (points: ProductChart, brix: number) => {
  const point = percentFromChart(points, brix)
  if (point.outcome !== 'on-chart') throw new Error('off the chart')
  return point.percent
}

test('on a point the chart gives what stands there', () => {
  for (const [brix, percent] of chart) {
    expect(percentFromChart(chart, brix)).toMatchObject({ outcome: 'on-chart', percent })
    expect(brixFromChart(chart, percent)).toMatchObject({ outcome: 'on-chart', brix })
  }
})

test('between two points it follows the cubic of their slopes', () => {
  // Slopes: at 2 the mean of 1.5 and 2, at 4 of 2 and 2.5, so 1.75 and 2.25. Half-way: (3 + 7) / 2 + 2 × (1.75 − 2.25) / 8 = 4.875
  expect(percentAt(chart, 3)).toBeCloseTo(4.875, 12)
})

test('where the chart suddenly turns steep, the slopes are held back so that the curve does not dip', () => {
  // First slopes 1 and (1 + 9) / 2 = 5 on a piece of secant 1, cut back by 3 / √26 to 0.588348 and 2.941742. In the middle:
  // 0.5 (0.588348 + 0.5 (3 − 1.176697 − 2.941742 + 0.5 (0.588348 + 2.941742 − 2))) = 0.205826; unheld it would dip to 0.
  const steep: ProductChart = [
    [0, 0],
    [1, 1],
    [2, 10],
    [3, 11],
  ]
  expect(percentAt(steep, 0.5)).toBeCloseTo(0.205826, 6)
})

test('two points are joined by a straight line', () => {
  expect(
    percentFromChart(
      [
        [1, 2],
        [5, 10],
      ],
      2,
    ),
  ).toEqual({ outcome: 'on-chart', brix: 2, percent: 4, slope: 2 })
})

test('beyond its ends the chart says where it ends, and is never carried on', () => {
  expect(percentFromChart(chart, 6.01)).toEqual({
    outcome: 'off-chart',
    quantity: 'brix',
    found: 6.01,
    low: 0,
    high: 6,
  })
  expect(percentFromChart(chart.slice(1), 1.99)).toMatchObject({ outcome: 'off-chart', low: 2 })
  expect(brixFromChart(chart, 12.1)).toEqual({
    outcome: 'off-chart',
    quantity: 'percent',
    found: 12.1,
    low: 0,
    high: 12,
  })
})

test.each<[string, ProductChart]>([
  ['chart is 1, expected at least 2 points', [[1, 2]]],
  [
    'chart.1.0 is 1, expected above 1',
    [
      [1, 2],
      [1, 3],
    ],
  ],
  [
    'chart.2.1 is 3',
    [
      [1, 2],
      [2, 3],
      [3, 3],
    ],
  ],
  [
    'chart.0.0 is NaN',
    [
      [Number.NaN, 2],
      [2, 3],
    ],
  ],
  [
    'chart.1.0 is 96',
    [
      [1, 2],
      [96, 3],
    ],
  ],
  [
    'chart.1.1 is 101',
    [
      [1, 2],
      [2, 101],
    ],
  ],
])('a chart that does not rise is refused: %s', (message, points) => {
  expect(() => percentFromChart(points, 1)).toThrow(message)
})

test('a reading that is no number is refused', () => {
  expect(() => percentFromChart(chart, Number.NaN)).toThrow('brix is NaN')
  expect(() => brixFromChart(chart, Number.NaN)).toThrow('percent is NaN')
})

test('a higher reading never gives a lower strength', () => {
  fc.assert(
    fc.property(anyChart, share, share, (points, one, other) => {
      const [left, right] = [place(points, Math.min(one, other)), place(points, Math.max(one, other))]
      expect(percentAt(points, right)).toBeGreaterThanOrEqual(percentAt(points, left) - 1e-12)
    }),
  )
})

test('the strength lies between those of the neighbouring points', () => {
  fc.assert(
    fc.property(anyChart, share, (points, part) => {
      const brix = place(points, part)
      const above = points.findIndex(([right], index) => index > 0 && right >= brix)
      const percent = percentAt(points, brix)
      expect(percent).toBeGreaterThanOrEqual(points[above - 1]![1])
      expect(percent).toBeLessThanOrEqual(points[above]![1])
    }),
  )
})

test('the reading for a strength gives that strength again', () => {
  fc.assert(
    fc.property(anyChart, share, (points, part) => {
      const [low, high] = [points[0]![1], points.at(-1)![1]]
      const percent = Math.min(high, low + part * (high - low))
      const point = brixFromChart(points, percent)
      if (point.outcome !== 'on-chart') throw new Error('off the chart')
      expect(Math.abs(percentAt(points, point.brix) - percent)).toBeLessThan(1e-12 * Math.max(1, percent) * 100)
    }),
  )
})

test('the slope is what a small step along the curve gives', () => {
  const step = 1e-6
  for (const brix of [0.5, 1.7, 2.5, 3.3, 5.9]) {
    const point = percentFromChart(chart, brix)
    const rise = (percentAt(chart, brix + step) - percentAt(chart, brix - step)) / (2 * step)
    expect(point).toMatchObject({ slope: expect.closeTo(rise, 6) })
  }
})
