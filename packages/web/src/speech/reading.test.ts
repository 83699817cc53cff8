import { expect, test } from 'vitest'
import { choiceFrom, nothingChosen, speechFor } from './reading.ts'

test('without a choice it is spoken as the browser prefers', () => {
  expect(speechFor(nothingChosen, ['de-CH', 'en'])).toEqual({ language: 'de', numbers: 'de-CH' })
  // A Pole with English behind it reads English, and figures as at home.
  expect(speechFor(nothingChosen, ['pl', 'en'])).toEqual({ language: 'en', numbers: 'pl' })
})

test('a browser whose language no standard knows is spoken to in the nearest, with its figures', () => {
  expect(speechFor(nothingChosen, ['en-US@posix'])).toEqual({ language: 'en', numbers: 'en' })
  expect(speechFor(nothingChosen, ['C'])).toEqual({ language: 'en', numbers: 'en' })
  expect(speechFor(nothingChosen, [])).toEqual({ language: 'en', numbers: 'en' })
})

test('language, figures and units are chosen apart', () => {
  expect(speechFor({ language: 'es', numbers: null, units: null }, ['en-GB'])).toEqual({
    language: 'es',
    numbers: 'en-GB',
  })
  expect(speechFor({ language: null, numbers: 'de', units: 'us' }, ['en'])).toEqual({
    language: 'en',
    numbers: 'de',
    units: 'us',
  })
})

test('what was kept and is no choice counts as none', () => {
  const chosen = { language: 'de', numbers: 'de-CH', units: 'imperial' } as const
  expect(choiceFrom(JSON.stringify(chosen))).toEqual(chosen)
  for (const text of [null, '', 'de', '{', '[]', '{"language":"la","numbers":"C@posix","units":"pints"}', '7']) {
    expect(choiceFrom(text)).toEqual(nothingChosen)
  }
})
