import { expect, test } from 'vitest'
import { entryId } from './entry-id.ts'

test('an id is laid out as the example of RFC 9562, appendix A.6', () => {
  // 017F22E2-79B0-7CC3-98C4-DC0C0C07398F: time 0x017F22E279B0, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F.
  const words = [0xcc3 << 20, 0x18c4 << 18, 0xdc0c << 16, 0x0c07398f].map((word) => word >>> 0)
  expect(entryId(0x017f22e279b0, () => words.shift()!)).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f')
})

test.each([-1, 0.5, Number.NaN, 2 ** 48])('a time of %d is refused by name', (milliseconds) => {
  expect(() => entryId(milliseconds, () => 0)).toThrow(/milliseconds/)
})
