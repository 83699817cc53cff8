import { expect, test } from 'vitest'
import { addition, mondayToFriday, reading, setup, shopOf, sumpOf } from '../testing.ts'
import { habitsOf } from './habits.ts'

const habits = (events: Parameters<typeof shopOf>[0]) => {
  const shop = shopOf(events, { calendar: mondayToFriday })
  return habitsOf(sumpOf(shop), shop)
}

test('of a sump nothing was poured into yet, seven tenths of its target are supposed to be usual', () => {
  const { usual, target, plainWater } = habits([setup('s', { target: 10 }, 4)])
  expect(target).toBe(10)
  expect(usual.strength).toBeCloseTo(7, 12)
  expect(plainWater).toMatchObject({ strength: 0, mixed: false })
})

test('what was poured is usual, the last of it most', () => {
  // 5 at first, then 0.7 · 5 + 0.3 · 3 = 4.4.
  const water = { hardness: 90, chloride: 20 }
  const poured = [addition('s', 4.4, { strength: 5, water }), addition('s', 5.4, { strength: 3, water })]
  const { usual } = habits([setup('s', {}, 4), ...poured])
  expect(usual.strength).toBeCloseTo(4.4, 12)
  expect(usual.hardness).toBeCloseTo(90 * (1 - 0.044), 12)
})

test('neat concentrate is no habit', () => {
  const poured = [addition('s', 4.4, { strength: 5 }), addition('s', 5.4, { strength: 100, amount: 1 })]
  expect(habits([setup('s', {}, 4), ...poured]).usual.strength).toBeCloseTo(5, 12)
})

test('fluid can stand as high as the brim, a fifth above the mark where nobody knows it', () => {
  expect(habits([setup('s', { capacity: 250 }, 4)]).brim).toBeCloseTo(1.25, 12)
  expect(habits([setup('s', { capacity: null }, 4)]).brim).toBe(1.2)
  expect(habits([setup('s', { capacity: 150 }, 4)]).brim).toBe(1.03)
})

test('work since the last reading is counted by the calendar', () => {
  // From Friday noon, day 8.5, to Monday noon: half a Friday and half a Monday.
  const events = [setup('s', {}, 4), reading('s', 8.5, { brix: 8 }), addition('s', 11.5)]
  expect(habits(events).workSince).toBeCloseTo(1, 12)
})
