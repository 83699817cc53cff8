import { expect, test } from 'vitest'
import type { EntryOf } from '../schema/entries/index.ts'
import type { Things } from '../setup/things.ts'
import { setupWords } from './setup-words.ts'

const none = new Map()
const things = {
  ...{ fluid: none, water: none, mixer: none, instrument: none, meter: none, waste: none },
  sump: new Map([['m7', { id: 'm7', name: 'Mill 7', fluid: 'f' }]]),
  container: new Map([['b', { id: 'b', name: 'Bucket' }]]),
} as unknown as Things
const said = (about: object, changes: object) => setupWords({ about, changes } as EntryOf<'setup'>, things)

test('what was set up is said of which thing, in words', () => {
  expect(said({ kind: 'sump', id: 'm7' }, { capacity: 300, fillVolume: 240 })).toBe('Set up Mill 7: brim, full mark')
  expect(said({ kind: 'container', id: 'b' }, { capacity: 12 })).toBe('Set up Bucket: what it holds')
  expect(said({ kind: 'shop', id: 'shop' }, { readEveryDays: 5 })).toBe('Set up the shop: days between readings')
})

test('a thing that is not there any more goes by the name it was given, and a field without a word by its own', () => {
  expect(said({ kind: 'water', id: 'gone' }, { name: 'Well', sulphide: 3 })).toBe('Set up Well: name, sulphide')
  expect(said({ kind: 'water', id: 'gone' }, { hardness: 3 })).toBe('Set up: hardness')
})
