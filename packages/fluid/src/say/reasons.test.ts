import { afterEach, beforeEach, expect, test } from 'vitest'
import { learn, speakAs } from '../words/index.ts'
import { byMistake, notPouredReasons, putOffReasons, reasonWith, recordedReason, sayReason } from './reasons.ts'

beforeEach(() => {
  learn('de', {
    misread: 'falsch abgelesen',
    'written down by mistake': 'versehentlich eingetragen',
    'no time': 'keine Zeit',
    'machine in use': 'Maschine läuft',
    'machine is running': 'Maschine läuft',
  })
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
})
afterEach(() => speakAs(() => ({ language: 'en', numbers: 'en' })))

test('a reason picked in one language is recorded alike in all, and read in each', () => {
  expect(recordedReason('falsch abgelesen')).toBe('misread')
  expect(sayReason('misread')).toBe('falsch abgelesen')
  expect(sayReason(byMistake)).toBe('versehentlich eingetragen')
})

test('a person’s own words are recorded and read as they were written', () => {
  for (const words of ['Pumpe lief noch', 'the {lid} was open', 'Schlüssel weg; Meister fragen'])
    expect([recordedReason(words), sayReason(words)]).toEqual([words, words])
})

test('of a reason with a word more the reason is said, the word stands as it was typed', () => {
  const recorded = reasonWith('no time', ' Ofen; um zwei ')
  expect(recorded).toBe('no time; Ofen; um zwei')
  expect(sayReason(recorded)).toBe('keine Zeit; Ofen; um zwei')
  expect([reasonWith('no time', ''), reasonWith(null, 'Ofen')]).toEqual(['no time', 'Ofen'])
})

test('where two lists have one word for two reasons, the list it was picked from decides', () => {
  expect(recordedReason('Maschine läuft', notPouredReasons)).toBe('machine in use')
  expect(recordedReason('Maschine läuft', putOffReasons)).toBe('machine is running')
})
