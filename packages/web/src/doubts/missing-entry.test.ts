import { expect, test } from 'vitest'
import type { Stamp } from '../entry/stamp.ts'
import { someSump } from '../standing/testing.ts'
import { type MissingTexts, missingEntry, missingTexts, readMissing } from './missing-entry.ts'

const now = Date.parse('2026-03-03T10:00:00Z')
const stamp: Stamp = {
  at: '2026-03-03T11:00:00.000+01:00',
  recordedAt: '2026-03-03T11:00:00.000+01:00',
  newId: () => '01900000-0000-7000-8000-000000000001',
}
const units = 'metric'
const where = { units, timeZone: 'Europe/Berlin', now } as const
const texts = (more: Partial<MissingTexts> = {}): MissingTexts => ({
  ...missingTexts({ what: 'mix', litres: 40, at: Date.parse('2026-02-27T08:06:00Z') }, units, 'Europe/Berlin'),
  ...more,
})
const entryOf = (more: Partial<MissingTexts> = {}) =>
  missingEntry(texts(more), someSump, { ...where, stamp, reader: { units } })

test('the form begins with what the doubt says, by the shop’s clock', () => {
  expect(texts()).toEqual({ what: 'mix', volume: '40', strength: '', water: '', at: '2026-02-27T09:06' })
})

test('what was missing is written at the time it happened, by who writes it now', () => {
  expect(entryOf({ strength: '6,5', water: 'di' })).toEqual({
    id: '01900000-0000-7000-8000-000000000001',
    at: '2026-02-27T08:06:00.000Z',
    recordedAt: '2026-03-03T11:00:00.000+01:00',
    sump: 'mill-7',
    kind: 'addition',
    volume: 40,
    strength: 6.5,
    water: 'di',
    fluid: 'blue',
    typed: { volume: '40 L', strength: '6,5 %' },
    note: 'written afterwards',
  })
})

test.each([
  ['water', { kind: 'addition', volume: 40, strength: 0 }],
  ['concentrate', { kind: 'addition', concentrate: 40 }],
  ['drawoff', { kind: 'drawoff', volume: 40 }],
  ['charge', { kind: 'charge', volume: 40 }],
] as const)('%s is written as what it is', (what, fields) => {
  expect(entryOf({ what })).toMatchObject(fields)
})

test('a pour that nobody measured is still a pour; concentrate without litres says nothing', () => {
  expect(entryOf({ volume: '' })).not.toHaveProperty('volume')
  expect(entryOf({ volume: '', what: 'concentrate' })).toBeNull()
  expect(entryOf({ volume: '', what: 'drawoff' })).toBeNull()
})

test('what is wrong is named at its field, and nothing is written', () => {
  expect(readMissing(texts({ volume: 'x' }), where).volume).toHaveProperty('fault')
  expect(readMissing(texts({ at: '' }), where).at).toEqual({
    fault: { found: 'nothing', expected: 'a day and a time' },
  })
  expect(readMissing(texts({ at: '2026-03-03T11:01' }), where).at).toEqual({
    fault: { found: '2026-03-03 11:01', expected: 'a time that has passed' },
  })
  expect(readMissing(texts({ at: '2026-03-03T11:00' }), where).at).toEqual({ value: now })
  expect(entryOf({ volume: 'x' })).toBeNull()
})
