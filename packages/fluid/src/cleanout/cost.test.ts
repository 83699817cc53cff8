import { expect, test } from 'vitest'
import { cleanoutCost } from './cost.ts'
import { cleanoutSheet } from './sheet.ts'

const sheet = cleanoutSheet({
  volume: 100,
  heldBack: 0,
  cleanerPercent: 2,
  rinsePercent: 2,
  rinseFraction: 0.5,
  rinses: 1,
  target: 5,
  hours: 2,
  solids: null,
  metals: [],
  enterable: false,
  foul: false,
  changeOver: null,
})
if (sheet.outcome !== 'sheet') throw new Error(sheet.outcome)

test('what has no price costs nothing', () => {
  expect(cleanoutCost(sheet, {})).toBe(0)
})

test('each price counts its own litres and hours', () => {
  // 2 L of cleaner, 1 + 5 L of concentrate, 98 + 49 + 95 L of water, 100 + 100 + 50 L of waste
  expect(cleanoutCost(sheet, { cleaner: 1 })).toBeCloseTo(2, 12)
  expect(cleanoutCost(sheet, { concentrate: 1 })).toBeCloseTo(6, 12)
  expect(cleanoutCost(sheet, { water: 1 })).toBeCloseTo(242, 12)
  expect(cleanoutCost(sheet, { waste: 1 })).toBeCloseTo(250, 12)
  expect(cleanoutCost(sheet, { downtime: 1 })).toBeCloseTo(sheet.downtimeHours, 12)
  expect(cleanoutCost(sheet, { labour: 1 })).toBeCloseTo(sheet.labourHours, 12)
})

test('a negative price is refused', () => {
  expect(() => cleanoutCost(sheet, { waste: -1 })).toThrow('prices.waste is -1')
})
