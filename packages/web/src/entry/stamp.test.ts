import { expect, test } from 'vitest'
import { withOffset } from './stamp.ts'

test('an instant keeps the offset of the clock it was read from', () => {
  const time = new Date('2026-11-25T07:30:00.000Z')
  expect(withOffset(time, 60)).toBe('2026-11-25T08:30:00.000+01:00')
  expect(withOffset(time, -210)).toBe('2026-11-25T04:00:00.000-03:30')
  expect(withOffset(time, 0)).toBe('2026-11-25T07:30:00.000+00:00')
  expect(Date.parse(withOffset(time, 345))).toBe(time.getTime())
})
