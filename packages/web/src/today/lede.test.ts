import { learn, speakAs } from '@sumpbook/fluid'
import { afterEach, expect, test } from 'vitest'
import { handoverOf, withoutHandover } from './lede.ts'

afterEach(() => speakAs(() => ({ language: 'en', numbers: 'en' })))

test('the last shift’s note is taken off the end of the lede, over all its lines', () => {
  const lede = '1 sump to fill. Last shift’s note: “Mill 1 smells.\nLook at it: “soon””'
  expect(handoverOf(lede)).toBe('Last shift’s note: “Mill 1 smells.\nLook at it: “soon””')
  expect(withoutHandover(lede)).toBe('1 sump to fill.')
  expect(handoverOf('1 sump to fill.')).toBeNull()
  expect(withoutHandover('1 sump to fill.')).toBe('1 sump to fill.')
})

test('in another language it is found by the words of that language', () => {
  learn('de', { 'Last shift’s note: “{note}”': 'Notiz der letzten Schicht: „{note}“' })
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
  const lede = '1 Behälter ist zu füllen. Notiz der letzten Schicht: „M1 riecht“'
  expect(handoverOf(lede)).toBe('Notiz der letzten Schicht: „M1 riecht“')
  expect(withoutHandover(lede)).toBe('1 Behälter ist zu füllen.')
})
