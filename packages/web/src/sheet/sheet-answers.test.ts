import { expect, test } from 'vitest'
import { answerAt, answerKind, canBeUnknown, questionWords, readAnswer, withAnswer } from './sheet-answers.ts'

test('an answer goes to the place its pointer names, and leaves the others alone', () => {
  const map = withAnswer({ dates: 'dmy' }, '/machines/Mill 7/fillVolume', 310)
  expect(map).toEqual({ dates: 'dmy', machines: { 'Mill 7': { fillVolume: 310 } } })
  expect(withAnswer(map, '/machines/Mill 7/target', 8)).toEqual({
    dates: 'dmy',
    machines: { 'Mill 7': { fillVolume: 310, target: 8 } },
  })
})

test('a slash and a tilde in a machine’s name are kept (RFC 6901)', () => {
  expect(withAnswer({}, '/machines/Mill 7~1B ~0new/fillVolume', 10)).toEqual({
    machines: { 'Mill 7/B ~new': { fillVolume: 10 } },
  })
})

test('fluids are a list', () => {
  const map = withAnswer(withAnswer({}, '/fluids/0/name', 'Blue 40'), '/fluids/0/brixFactor', 1.6)
  expect(map).toEqual({ fluids: [{ name: 'Blue 40', brixFactor: 1.6 }] })
  expect(answerAt(map, '/fluids/0/brixFactor')).toBe(1.6)
})

test('null says "not known", and is an answer; undefined takes an answer back', () => {
  const map = withAnswer({}, '/newSumps/target', null)
  expect(answerAt(map, '/newSumps/target')).toBe(null)
  expect(answerAt(withAnswer(map, '/newSumps/target', undefined), '/newSumps/target')).toBe(undefined)
})

test('a column left out is null under its heading', () => {
  expect(withAnswer({}, '/columns/Shift', null)).toEqual({ columns: { Shift: null } })
})

test('what is asked for follows from where the answer belongs', () => {
  expect(answerKind({ pointer: '/dates', question: '', choices: ['dmy', 'mdy'] })).toBe('choice')
  expect(answerKind({ pointer: '/machines/Mill 7/fillVolume', question: '' })).toBe('volume')
  expect(answerKind({ pointer: '/newSumps/target', question: '' })).toBe('percent')
  expect(answerKind({ pointer: '/fluids/0/brixFactor', question: '' })).toBe('number')
  expect(answerKind({ pointer: '/fluids/0/name', question: '' })).toBe('text')
})

test('a volume is litres, as the question says, unless another unit is typed', () => {
  expect(readAnswer('310', 'volume', 'us')).toEqual({ value: 310 })
  // 80 × 3.785411784 L
  expect(readAnswer('80 gal', 'volume', 'us')).toEqual({ value: expect.closeTo(302.83294272, 8) })
  expect(readAnswer('0', 'volume', 'metric')).toEqual({ fault: { found: '0', expected: 'above 0' } })
})

test('a question says whether "not known" is an answer', () => {
  const question = { pointer: '/fluids/0/brixFactor', question: 'What is its factor? (null: not known)' }
  expect(canBeUnknown(question)).toBe(true)
  expect(questionWords(question)).toBe('What is its factor?')
})
