import { expect, test } from 'vitest'
import { readPercent, readPlain } from './read.ts'
import { readTexts } from './read-texts.ts'

const readers = { strength: (text: string) => readPercent(text), dial: (text: string) => readPlain(text) }

test('each field has its value or its fault, and an empty one neither', () => {
  expect(readTexts({ strength: '7,5 %', dial: '' }, readers)).toEqual({
    values: { strength: 7.5, dial: null },
    faults: {},
  })
  const { values, faults } = readTexts({ strength: '120', dial: 'x' }, readers)
  expect(values).toEqual({ strength: null, dial: null })
  expect(faults.strength).toEqual({ found: '120', expected: 'at least 0 and at most 100' })
  expect(faults.dial).toBeDefined()
})

test('a text that stands for a figure of the book keeps its digits', () => {
  const known = { strength: { text: '7.12', value: 7.12345 } }
  expect(readTexts({ strength: '7.12', dial: '' }, readers, known).values.strength).toBe(7.12345)
  expect(readTexts({ strength: '7.1', dial: '' }, readers, known).values.strength).toBe(7.1)
})
