import { expect, test } from 'vitest'
import { sayAsOf } from './off-line-line.tsx'

const at = (text: string) => Date.parse(text)

test('what is of today is said by its time, what is older by its day too; days are the shop’s', () => {
  const now = at('2026-11-28T22:30:00Z')
  expect(sayAsOf(at('2026-11-28T08:40:00Z'), now, 'Europe/Berlin')).toBe('09:40')
  expect(sayAsOf(at('2026-11-27T08:40:00Z'), now, 'Europe/Berlin')).toBe('Fri 27 Nov 09:40')
  // 23:30 UTC is past midnight in Berlin: another day there.
  expect(sayAsOf(now, at('2026-11-28T23:30:00Z'), 'Europe/Berlin')).toBe('Sat 28 Nov 23:30')
  expect(sayAsOf(now, at('2026-11-28T23:30:00Z'), 'UTC')).toBe('22:30')
})
