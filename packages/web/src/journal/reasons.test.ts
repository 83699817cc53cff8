import { learn, speakAs } from '@sumpbook/fluid'
import { afterEach, expect, test } from 'vitest'
import { byMistake, recordedReason, sayReason } from './reasons.ts'

afterEach(() => speakAs(() => ({ language: 'en', numbers: 'en' })))

test('a reason picked in one language is recorded alike in all, and read in each', () => {
  learn('de', { misread: 'falsch abgelesen', 'written down by mistake': 'versehentlich eingetragen' })
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
  expect(recordedReason('falsch abgelesen')).toBe('misread')
  expect(sayReason('misread')).toBe('falsch abgelesen')
  expect(sayReason(byMistake)).toBe('versehentlich eingetragen')
})

test('a person’s own words are recorded and read as they were written', () => {
  for (const words of ['Pumpe lief noch', 'the {lid} was open'])
    expect([recordedReason(words), sayReason(words)]).toEqual([words, words])
})
