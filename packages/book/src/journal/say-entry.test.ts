import { learn, speakAs } from '@sumpbook/fluid'
import { afterEach, beforeAll, expect, test } from 'vitest'
import type { Entry } from '../schema/entries/index.ts'
import type { Things } from '../setup/things.ts'
import { catalogue as german } from '../words/de.ts'
import { sayEntry } from './say-entry.ts'

beforeAll(() => learn('de', german))
afterEach(() => speakAs(() => ({ language: 'en', numbers: 'en' })))

const passedBy = (reason: string) =>
  sayEntry({ kind: 'skip', sump: 'saw', reason } as unknown as Entry, {} as Things, { units: 'metric' })

test('why a stop was passed by is said in the reader’s language where a button wrote it, and stands as written where a person did', () => {
  expect(passedBy('locked')).toBe('Passed by: locked')
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
  expect(passedBy('locked')).toBe('Ausgelassen: verschlossen')
  expect(passedBy('down')).toBe('Ausgelassen: Stillstand')
  expect(passedBy('locked, key with Anna')).toBe('Ausgelassen: locked, key with Anna')
})
