import { learn, speakAs } from '@sumpbook/fluid'
import { afterEach, beforeAll, expect, test } from 'vitest'
import type { Entry } from '../schema/entries/index.ts'
import type { Things } from '../setup/things.ts'
import { catalogue as german } from '../words/de.ts'
import { sayEntry } from './say-entry.ts'

beforeAll(() => learn('de', german))
afterEach(() => speakAs(() => ({ language: 'en', numbers: 'en' })))

const said = (entry: object) =>
  sayEntry({ sump: 'saw', ...entry } as unknown as Entry, {} as Things, { units: 'metric' })
const passedBy = (reason: string, note?: string) =>
  said({ kind: 'skip', reason, ...(note === undefined ? {} : { note }) })

test('why a stop was passed by is said in the reader’s language where a button wrote it, and stands as written where a person did', () => {
  expect(passedBy('locked')).toBe('Passed by: locked')
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
  expect(passedBy('locked')).toBe('Ausgelassen: gesperrt')
  expect(passedBy('down')).toBe('Ausgelassen: Stillstand')
  expect(passedBy('locked, key with Anna')).toBe('Ausgelassen: locked, key with Anna')
})

test('what was tapped as the reason is said in the reader’s language, the word more as it was typed', () => {
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
  expect(passedBy('not poured', 'no concentrate; Fass ist leer')).toBe(
    'Ausgelassen: nicht eingefüllt „kein Konzentrat; Fass ist leer“',
  )
  expect(said({ kind: 'void', entry: 'e', reason: 'misread' })).toBe('Eintrag zurückgezogen: falsch abgelesen')
  // A note of another kind of entry is its writer's, whatever it says.
  expect(said({ kind: 'drawoff', note: 'no time' })).toContain('„no time“')
})
