import { expect, test } from 'vitest'
import type { Stamp } from '../entry/stamp.ts'
import { countedOf, drumsOf, subjectEntry } from './stock-entries.ts'

const stamp: Stamp = {
  at: '2026-03-03T09:00:00.000+01:00',
  recordedAt: '2026-03-03T09:00:00.000+01:00',
  newId: () => 'x',
}
const subject = { about: { kind: 'stock' as const, id: 'f1' }, today: '2026-03-03' }

test('a form of today is of now, one of another day of its noon, and what was not told is left out', () => {
  const values = { texts: { on: '2026-03-03', note: null }, typed: { drums: '2' } }
  expect(subjectEntry('receipt', subject, { litres: 400, lot: null }, values, stamp)).toEqual({
    id: 'x',
    at: stamp.at,
    recordedAt: stamp.recordedAt,
    kind: 'receipt',
    about: subject.about,
    litres: 400,
    typed: { drums: '2' },
  })
  const before = subjectEntry('receipt', subject, {}, { texts: { on: '2026-03-01', note: 'Late' }, typed: {} }, stamp)
  expect(before).toMatchObject({ at: '2026-03-01T12:00:00+01:00', note: 'Late' })
})

test('drums are litres by their size; a count is full drums and a rest, either of them alone too', () => {
  const values = (numbers: Record<string, number | null>) => ({ numbers, texts: {}, typed: {} })
  expect(drumsOf(values({ drums: 2, size: 200 }))).toBe(400)
  expect(drumsOf(values({ drums: null, size: 200 }))).toBeNull()
  expect(countedOf(values({ drums: 1, size: 200, rest: 35 }))).toBe(235)
  expect(countedOf(values({ drums: null, size: 200, rest: 35 }))).toBe(35)
  expect(countedOf(values({ drums: 0, size: 200, rest: null }))).toBe(0)
  expect(countedOf(values({ drums: null, size: 200, rest: null }))).toBeNull()
})
