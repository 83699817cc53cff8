/** A round in German: figures with either sign, and recorded words that stay what they are. */
import { learn, reasonWith, speakAs } from '@sumpbook/fluid'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { readingEntry, skipEntry } from '../entry/entries.ts'
import { decimalSign } from '../say/units.ts'
import { someSump } from '../standing/testing.ts'
import { catalogue } from '../words/de.ts'
import { saySeen, signsOf } from './signs.ts'
import { recordOf } from './stop-record.ts'
import { isPadIn, nothingTested, padTapped, padWords, readTested } from './tested.ts'
import { nothingTyped, type Typed } from './typed.ts'
import { verdictOf } from './verdict.ts'

const reader = { units: 'metric' } as const
const now = Date.parse('2026-03-03T09:30:00Z')
const at = '2026-03-03T10:30:00.000+01:00'
const stamp = { at, recordedAt: at, newId: () => 'id' }
const verdict = (typed: Partial<Typed>) => verdictOf({ ...nothingTyped, ...typed }, someSump, reader, now)

beforeAll(() => {
  learn('de', catalogue)
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
})
afterAll(() => speakAs(() => ({ language: 'en', numbers: 'en' })))

test('the sign of the keys is that of the numbers, whatever the language of the sentences', () => {
  expect(['de-DE', 'de-CH', 'es-ES', 'es-MX'].map(decimalSign)).toEqual([',', '.', ',', '.'])
})

test('a comma and a point are one reading, and one recipe', () => {
  const point = verdict({ level: '150', brix: '3.4' })
  // 3.4 × 1.6 = 5.44 %.
  expect(point.concentration?.mean).toBeCloseTo(5.44, 12)
  expect(verdict({ level: '150', brix: '3,4' })).toEqual(point)
  expect(point.stands).toContain('Sollbereich')
})

test('a pad is written with the sign of the reader’s numbers, and known with either', () => {
  const pads = [8.2, 8.4, 8.6]
  expect(padWords(8.2)).toBe('8,2')
  expect(padTapped(8.4, '8,2', pads)).toBe('8,2-8,4')
  expect(padTapped(8.4, '8.2', pads)).toBe('8,2-8,4')
  expect(padTapped(8.2, '8.2', pads)).toBe('')
  expect([isPadIn(8.2, '8,2-8,4'), isPadIn(8.2, '8.2'), isPadIn(8.6, '8,2-8,4')]).toEqual([true, true, false])
  expect(readTested({ ...nothingTested, texts: { ph: '8,2-8,4' } }).found.ph).toEqual({ low: 8.2, high: 8.4 })
})

test('what is recorded stays in English, and is said in German', () => {
  const typed = { ...nothingTyped, levelBy: 'quarter', level: '½' } as const
  const reading = readingEntry(typed, verdict(typed), 'mill-7', stamp)!
  expect(reading.typed).toEqual({ volume: 'about ½ of the mark' })
  const skip = skipEntry('locked', 'Meister hat den Schlüssel {heute}', 'mill-7', stamp)
  expect(skip).toMatchObject({ reason: 'locked' })
  const record = recordOf([reading, skip], reader)
  expect(record.read).toContain('½')
  expect(record.read).not.toContain('about')
  // A person's own words are no message, whatever stands in them.
  expect(record.why).toMatch(/^(?!locked).+: Meister hat den Schlüssel \{heute\}$/)
  const notPoured = skipEntry('not poured', reasonWith('no time', 'Ofen'), 'mill-7', stamp)
  expect(notPoured).toMatchObject({ note: 'no time; Ofen' })
  expect(recordOf([notPoured], reader).why).toBe('nicht eingefüllt: keine Zeit; Ofen')
  const seen = { look: 'foam', smell: 'fine', oil: null }
  expect(signsOf(seen)).toEqual(['foam'])
  expect(saySeen(seen)).toMatch(/^Schaum · .+ · –$/)
})
