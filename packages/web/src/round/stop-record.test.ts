import { expect, test } from 'vitest'
import type { Entry } from '../api/types.ts'
import { recordOf, sayPoured } from './stop-record.ts'

const reader = { units: 'metric' } as const
const entry = (n: number, fields: object) =>
  ({ id: `e${n}`, at: '2026-03-03T08:00:00Z', sump: 's1', ...fields }) as unknown as Entry

test('a pour is water and concentrate: 40 L at 17.6 % are 7.04 L of concentrate in 32.96 L of water', () => {
  // 40 × 17.6 / 100 = 7.04; 40 − 7.04 = 32.96, by hand.
  const record = recordOf([entry(1, { kind: 'addition', volume: 40, strength: 17.6 })], reader)
  expect(record).toMatchObject({ read: '', why: '', hasPhoto: false })
  expect(record.concentrate).toBeCloseTo(7.04, 10)
  expect(record.water).toBeCloseTo(32.96, 10)
})

test('a pour that nobody measured is counted apart, never as none', () => {
  const blind = recordOf([entry(1, { kind: 'addition', toMark: true, strength: 5 })], reader)
  expect(blind).toMatchObject({ water: null, concentrate: null })
  expect(sayPoured([blind], reader)).toBe('once without measuring')
  const measured = recordOf([entry(2, { kind: 'addition', volume: 20, strength: 5 })], reader)
  expect(sayPoured([blind, measured, blind], reader)).toMatch(
    /^19 L of water and 1 L of concentrate; 2 times without measuring$/,
  )
})

test('why a sump was passed by stands with its word', () => {
  const record = recordOf([entry(1, { kind: 'skip', reason: 'not poured', note: 'no concentrate' })], reader)
  expect(record).toMatchObject({ why: 'not poured: no concentrate', entries: ['e1'] })
})

test('what was read and seen is said, and that a picture went with it', () => {
  const record = recordOf(
    [
      entry(1, { kind: 'reading', brix: 3.5, volume: 160, typed: { volume: '160 L', brix: '3,5 °Brix' } }),
      entry(3, { kind: 'reading', nitrite: 10, typed: { nitrite: '10 mg/L' } }),
      entry(2, { kind: 'observation', signs: ['foam'], photo: 'ab' }),
    ],
    reader,
  )
  expect(record).toMatchObject({ read: '160 L, 3,5 °Brix, nitrite 10 mg/L, foam', hasPhoto: true, drawn: 0 })
})
