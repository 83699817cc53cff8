import { expect, test } from 'vitest'
import { endOf } from './until.ts'

const asked = { now: '2026-03-03T23:30:00Z', shiftEnds: '2026-03-04T05:00:00.000Z', timeZone: 'Europe/Berlin', day: '' }

// Half past eleven in Greenwich is half past midnight on the 4th in Berlin.
test('tomorrow and a week are days of the shop, the next shift is its instant', () => {
  expect(endOf('tomorrow', asked)).toBe('2026-03-05')
  expect(endOf('week', asked)).toBe('2026-03-11')
  expect(endOf('shift', asked)).toBe('2026-03-04T05:00:00.000Z')
})

test.each([
  ['', null],
  ['2026-03-04', null],
  ['2026-03-05', '2026-03-05'],
  ['2026-04-04', '2026-04-04'],
  ['2026-04-05', null],
])('the day %s ends it on %s: from tomorrow on, at most 31 days', (day, end) => {
  expect(endOf('day', { ...asked, day })).toBe(end)
})
