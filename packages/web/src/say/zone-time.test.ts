import { expect, test } from 'vitest'
import { clockIn, instantIn } from './zone-time.ts'

const berlin = 'Europe/Berlin'
const utc = (text: string) => Date.parse(text)

test('a clock shows its zone’s time, an hour ahead of Greenwich in winter, two in summer', () => {
  expect(clockIn(berlin, utc('2026-03-03T08:30:00Z'))).toBe('2026-03-03T09:30')
  expect(clockIn(berlin, utc('2026-07-03T22:30:00Z'))).toBe('2026-07-04T00:30')
})

test('a day and time are the instant at which the zone’s clock shows them', () => {
  expect(instantIn(berlin, '2026-03-03T09:30')).toBe(utc('2026-03-03T08:30:00Z'))
  expect(instantIn('America/Chicago', '2026-07-04T00:30')).toBe(utc('2026-07-04T05:30:00Z'))
})

// Clocks in Berlin went forward on 29 March 2026 at 1:00 UTC, back on 25 October 2026 at 1:00 UTC.
test('the hour that comes twice is taken the first time, the one left out an hour later', () => {
  expect(instantIn(berlin, '2026-10-25T02:30')).toBe(utc('2026-10-25T00:30:00Z'))
  expect(instantIn(berlin, '2026-03-29T02:30')).toBe(utc('2026-03-29T01:30:00Z'))
})

test('what is no day and time is no instant', () => {
  for (const text of ['', '2026-03-03', 'yesterday', '2026-13-03T09:30']) expect(instantIn(berlin, text)).toBeNull()
})
