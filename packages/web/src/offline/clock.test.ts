import { expect, test } from 'vitest'
import { clockAheadOf, sayClock } from './clock.ts'

// RFC 9110 §5.6.7: the date of its own example, 784111777 s after 1970.
const date = 'Sun, 06 Nov 1994 08:49:37 GMT'
const server = 784_111_777_000

test('a clock that shows the server’s second in its middle is right', () => {
  expect(clockAheadOf({ sentAt: server + 400, answeredAt: server + 600, date })).toBe(0)
})

test('ahead is positive, behind negative, each from the middle of the request', () => {
  expect(clockAheadOf({ sentAt: server + 600_000, answeredAt: server + 601_000, date })).toBe(600_000)
  expect(clockAheadOf({ sentAt: server - 600_000, answeredAt: server - 599_000, date })).toBe(-600_000)
})

test('a slow answer, a clock set back meanwhile and an answer without a date tell nothing', () => {
  expect(clockAheadOf({ sentAt: server, answeredAt: server + 10_000, date })).not.toBe(null)
  expect(clockAheadOf({ sentAt: server, answeredAt: server + 10_001, date })).toBe(null)
  expect(clockAheadOf({ sentAt: server, answeredAt: server - 1, date })).toBe(null)
  expect(clockAheadOf({ sentAt: server, answeredAt: server + 100, date: null })).toBe(null)
})

test('it is said from three minutes on, in the length a person thinks in', () => {
  expect(sayClock(null)).toBe('')
  expect(sayClock(179_999)).toBe('')
  expect(sayClock(180_000)).toContain('3 minutes fast')
  expect(sayClock(-14 * 60_000)).toContain('14 minutes slow')
  expect(sayClock(3 * 3_600_000)).toContain('3 hours fast')
  expect(sayClock(-3 * 86_400_000)).toContain('3 days slow')
})
