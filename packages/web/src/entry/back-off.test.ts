import { expect, test } from 'vitest'
import { waitAfter } from './back-off.ts'

// 5 s doubled: 5, 10, 20, 40, 80, 160 s, then 300 s in place of 320 s.
test('each go in vain doubles the wait, up to five minutes', () => {
  const waits = [1, 2, 3, 4, 5, 6, 7, 30].map((tries) => waitAfter(tries, 0.5) / 1000)
  expect(waits).toEqual([5, 10, 20, 40, 80, 160, 300, 300])
})

test('chance spreads it by a quarter either way', () => {
  expect(waitAfter(2, 0)).toBe(7_500)
  expect(waitAfter(2, 1)).toBe(12_500)
})
