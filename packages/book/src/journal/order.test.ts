import { expect, test } from 'vitest'
import { rankOf } from './order.ts'

test('a kind that this version does not know stands where a reading stands, whatever it is called', () => {
  expect(rankOf('weighing')).toBe(rankOf('reading'))
  expect(rankOf('constructor')).toBe(rankOf('reading'))
  expect(rankOf('toString')).toBe(rankOf('reading'))
})
