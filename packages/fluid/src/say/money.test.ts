import { expect, test } from 'vitest'
import { sayCents, sayMoney, sayMoneyBetween, sayWholeMoney } from './money.ts'

const euro = { currency: 'EUR' }

test('money is said to the coin of its currency, in the reader’s signs', () => {
  expect(sayCents(41237, euro)).toBe('€412.37')
  expect(sayCents(41237, { ...euro, locale: 'de' })).toBe('412,37\u00a0€')
  expect(sayCents(41237, { currency: 'JPY' })).toBe('¥412')
  expect(sayCents(-0, euro)).toBe('€0.00')
})

test('whole from a hundred on, to the coin below', () => {
  expect(sayMoney(9999, euro)).toBe('€99.99')
  expect(sayMoney(10_000, euro)).toBe('€100')
  expect(sayMoney(-41237, euro)).toBe('-€412')
  expect(sayWholeMoney(-20, euro)).toBe('€0')
})

test('an interval that is none is not said', () => {
  expect(sayMoneyBetween({ mean: 3800, low: 2000, high: 6100 }, euro)).toBe('€38 (€20–€61)')
  expect(sayMoneyBetween({ mean: 3800, low: 3790, high: 3810 }, euro)).toBe('€38')
})
