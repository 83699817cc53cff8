import { expect, test } from 'vitest'
import type { Cost } from './cost-api.ts'
import { changedCosts, figureText, ownFigures, readFigure } from './own-figures.ts'

const cost = {
  currency: 'USD',
  assumptions: [
    { figure: 'labourPerHour', value: 42 },
    { figure: 'cleanerPerLitre', value: null },
    { figure: 'wastePerLitre', value: 0.25 },
  ],
  prices: {
    streams: [
      { name: 'Sludge', perLitre: null },
      { name: 'Oil', perLitre: 0.1 },
    ],
    additives: [],
  },
} as unknown as Cost
const figures = ownFigures(cost, 'us')
const of = (key: string) => figures.find((one) => one.key === key)!
const standing = Object.fromEntries(figures.map(({ key, value }) => [key, value]))

test('every figure names its money and its unit, and is empty where it is not set', () => {
  expect(of('wastePerLitre').label).toBe('Waste, USD per gal')
  // 0.25 a litre × 3.785411784
  expect(figureText(of('wastePerLitre'), 'us')).toBe('0.9464')
  expect(figureText(of('cleanerPerLitre'), 'us')).toBe('')
  expect(of('stream:Oil').value).toBe(0.1)
})

test('a price is kept a litre, whatever unit it is typed for', () => {
  const read = readFigure('3.785411784', of('cleanerPerLitre'), 'us')
  expect('value' in read && read.value).toBeCloseTo(1, 12)
  expect(readFigure('42,5', of('labourPerHour'), 'metric')).toEqual({ value: 42.5 })
  expect(readFigure('-1', of('labourPerHour'), 'metric')).toMatchObject({ fault: { expected: 'at least 0' } })
  expect(readFigure('2000', of('minutesPerStop'), 'metric')).toHaveProperty('fault')
})

test('only what is other than before is written, with what it was', () => {
  expect(changedCosts(figures, standing)).toBe(null)
  expect(changedCosts(figures, { ...standing, labourPerHour: 45 })).toEqual({
    changes: { costs: { labourPerHour: 45 } },
    was: { costs: { labourPerHour: 42 } },
    isFirst: false,
  })
  expect(changedCosts(figures, { ...standing, cleanerPerLitre: 7 })).toEqual({
    changes: { costs: { cleanerPerLitre: 7 } },
    was: null,
    isFirst: true,
  })
})

test('a figure that was emptied is taken away', () => {
  expect(changedCosts(figures, { ...standing, labourPerHour: null })!.changes).toEqual({
    costs: { labourPerHour: null },
  })
})

test('prices of streams are written as one list', () => {
  expect(changedCosts(figures, { ...standing, 'stream:Sludge': 0.4 })).toEqual({
    changes: {
      costs: {
        wasteStreams: [
          { stream: 'Sludge', perLitre: 0.4 },
          { stream: 'Oil', perLitre: 0.1 },
        ],
      },
    },
    was: { costs: { wasteStreams: [{ stream: 'Oil', perLitre: 0.1 }] } },
    isFirst: true,
  })
})
