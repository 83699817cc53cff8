import { expect, test } from 'vitest'
import { entryId } from '../../schema/entries/envelope.ts'
import { entryIdAt, voidIdAt } from './entry-id.ts'
import { TimesSeen } from './times-seen.ts'

const slot = { sump: 'm7', at: '2026-10-05T12:10:00.000Z', group: 'brix', ordinal: 0 }

test('an id is a UUID of version 8 with the variant of RFC 9562', () => {
  expect(entryIdAt(slot, 0)).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)
  expect(entryId.safeParse(entryIdAt(slot, 0)).success).toBe(true)
})

test('an id begins with its time in milliseconds, as in version 7', () => {
  expect(Number.parseInt(entryIdAt(slot, 0).slice(0, 13).replace('-', ''), 16)).toBe(Date.UTC(2026, 9, 5, 12, 10))
})

test('the same place gives the same id, every other place another', () => {
  expect(entryIdAt({ ...slot }, 0)).toBe(entryIdAt(slot, 0))
  const others = [
    entryIdAt(slot, 0),
    entryIdAt(slot, 1),
    voidIdAt(slot, 0),
    entryIdAt({ ...slot, ordinal: 1 }, 0),
    entryIdAt({ ...slot, group: 'ph' }, 0),
    entryIdAt({ ...slot, sump: 'm8' }, 0),
    entryIdAt({ ...slot, at: '2026-10-05T12:10:01.000Z' }, 0),
  ]
  expect(new Set(others).size).toBe(others.length)
})

test('a sump whose id looks like the rest of a place is no other place', () => {
  const odd = { ...slot, sump: `m7/${slot.at}/brix/0`, group: '' }
  expect(entryIdAt(odd, 0)).not.toBe(entryIdAt(slot, 0))
})

test('times are counted exactly, as many as there are', () => {
  const seen = new TimesSeen()
  const times = Array.from({ length: 5000 }, (_, i) => Date.UTC(2026, 0, 1) + (i % 2500) * 86_400_000)
  expect(times.map((time) => seen.add(time))).toEqual(times.map((_, i) => (i < 2500 ? 0 : 1)))
  expect([seen.add(0), seen.add(0.5), seen.add(-1), seen.add(-1)]).toEqual([0, 0, 0, 1])
})
