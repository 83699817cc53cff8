import { expect, test } from 'vitest'
import type { DoubtKind } from '../estimate/answer-types.ts'
import { sayDoubt } from './doubt.ts'

const found = { quantity: 'brix', read: 9.8, expected: 5.3, low90: 5, high90: 5.6 } as const
const doubt = { kind: 'misread', probability: 0.93, volume: null, found, open: true } as const
const metric = { units: 'metric' } as const

test('a doubt says what was found, what was expected, the likely story, and to read again first', () => {
  expect(sayDoubt(doubt, metric)).toBe(
    'Read 9.8 °Brix where 5.0 to 5.6 °Brix was expected: likely misread or mistyped. Read it again first.',
  )
})

test('a story that is hardly likelier than the others is not called likely', () => {
  expect(sayDoubt({ ...doubt, probability: 0.79 }, metric)).toContain(': more likely than not misread')
  expect(sayDoubt({ ...doubt, probability: 0.8 }, metric)).toContain(': likely misread')
})

test('litres that nobody wrote down are said in the reader’s unit, without a sign', () => {
  const missing = { ...doubt, kind: 'unlogged-addition', volume: 40 } as const
  expect(sayDoubt(missing, metric)).toContain(
    'likely about 40 L of mix that nobody wrote down. Read it again first; if it stands, write the missing entry.',
  )
  expect(sayDoubt({ ...missing, kind: 'unlogged-drawoff', volume: -37.85411784 }, { units: 'us' })).toContain(
    'about 10 gal of fluid taken out',
  )
})

test('a level is said in litres, a titration in percent', () => {
  const level = { quantity: 'seen', read: 260, expected: 200, low90: 190, high90: 210 } as const
  expect(sayDoubt({ ...doubt, found: level }, metric)).toMatch(/^Saw 260 L where 190 to 210 L was expected/)
  const titration = { quantity: 'titration', read: 12, expected: 8, low90: 7.96, high90: 8.04 } as const
  expect(sayDoubt({ ...doubt, found: titration }, metric)).toMatch(/^Titrated 12\.0 % where 8\.0 % was expected/)
})

test('an instrument’s doubt is one for its round, with its side', () => {
  const round = { ...doubt, kind: 'instrument', found: { ...found, read: 5.3, expected: 4.9 } } as const
  expect(sayDoubt(round, metric)).toBe(
    'All readings of a round lie above what was expected, by about 0.4 °Brix: likely the instrument is off. Check its zero with water, then read again first.',
  )
  const low = { ...round, found: { ...found, read: 4.5, expected: 4.9 } }
  expect(sayDoubt(low, metric)).toContain('lie below')
})

test('a doubt that no longer moves the figures says so', () => {
  expect(sayDoubt({ ...doubt, open: false }, metric)).toContain('it no longer moves the figures.')
})

test.each<DoubtKind>([
  'misread',
  'instrument',
  'wrong-sump',
  'wrong-fluid',
  'unlogged-addition',
  'unlogged-water',
  'unlogged-concentrate',
  'unlogged-drawoff',
  'unlogged-charge',
  'leak-in',
])('%s offers to read again first', (kind) => {
  expect(sayDoubt({ ...doubt, kind }, metric)).toMatch(/read (it )?again first/i)
})
