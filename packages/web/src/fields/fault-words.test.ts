import { type Language, learn, speakAs } from '@sumpbook/fluid'
import { afterEach, beforeAll, expect, test } from 'vitest'
import { catalogue as german } from '../words/de.ts'
import { catalogue as spanish } from '../words/es.ts'
import { sayExpected } from './fault-words.ts'

const speak = (language: Language) => speakAs(() => ({ language, numbers: language }))

beforeAll(() => {
  learn('de', german)
  learn('es', spanish)
})
afterEach(() => speak('en'))

test('amounts that would do stand in a list of the language, the last behind its "or"', () => {
  const expected = 'a volume such as 60 L, 15 US gal or 12 imp gal'
  expect(sayExpected(expected)).toBe(expected)
  speak('de')
  expect(sayExpected(expected)).toBe('ein Volumen wie 60 L, 15 US gal oder 12 imp gal')
  speak('es')
  expect(sayExpected(expected)).toBe('un volumen como 60 L, 15 US gal o 12 imp gal')
})

test('one amount stands alone', () => {
  expect(sayExpected('a pH such as 9.2')).toBe('a pH such as 9.2')
})
