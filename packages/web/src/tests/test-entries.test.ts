import { expect, test } from 'vitest'
import type { Stamp } from '../entry/stamp.ts'
import { lookedEntry, resultEntry, sampleEntry, testReading } from './test-entries.ts'

const stamp: Stamp = {
  at: '2026-03-03T10:00:00.000+01:00',
  recordedAt: '2026-03-03T10:00:00.000+01:00',
  newId: () => 'new',
}

test('a look that found nothing is an observation without signs', () => {
  expect(lookedEntry('s1', stamp)).toMatchObject({ id: 'new', kind: 'observation', sump: 's1', signs: [] })
})

test('a sample says that its result is to come, and by which way', () => {
  expect(sampleEntry('s1', 'dip slide', stamp)).toMatchObject({ kind: 'reading', pending: true, method: 'dip slide' })
})

test('a result is of its sample’s time, and read now', () => {
  const sample = { id: 'the-sample', sump: 's1', at: '2026-03-01T08:00:00.000Z', method: 'dip slide' }
  expect(resultEntry(sample, { bacteria: 1e4 }, stamp)).toMatchObject({
    id: 'new',
    at: '2026-03-01T08:00:00.000Z',
    readAt: '2026-03-03T10:00:00.000+01:00',
    recordedAt: '2026-03-03T10:00:00.000+01:00',
    answers: 'the-sample',
    bacteria: 10_000,
  })
})

test('what was typed is kept beside what was read', () => {
  expect(testReading('s1', { nitrite: { below: 10 } }, { nitrite: '<10 mg/L' }, stamp)).toMatchObject({
    nitrite: { below: 10 },
    typed: { nitrite: '<10 mg/L' },
  })
})
