import { expect, test } from 'vitest'
import { growthAfter, phOf } from './growth.ts'

const kept = { concentration: 8, target: 8, temperature: 22, running: true, trampOil: 0.5 }

test('a kept and running sump does not turn, a weak one at rest turns within three weeks', () => {
  expect(growthAfter(3, 24 * 14, kept)).toBeLessThan(3.1)
  expect(growthAfter(3, 24 * 21, { ...kept, concentration: 4, running: false, trampOil: 2 })).toBeGreaterThan(6)
})

test('growth stays between a clean and a turned sump', () => {
  expect(growthAfter(2, 24 * 365, kept)).toBe(2)
  expect(growthAfter(7, 24 * 365, { ...kept, concentration: 2, running: false })).toBe(7.5)
})

test('pH falls with bacteria and with weakness', () => {
  const fresh = phOf({ concentration: 8, target: 8, bacteria: 2 })
  expect(fresh).toBeGreaterThan(9)
  expect(phOf({ concentration: 8, target: 8, bacteria: 6.5 })).toBeLessThan(fresh - 0.5)
  expect(phOf({ concentration: 4, target: 8, bacteria: 2 })).toBeLessThan(fresh)
})
