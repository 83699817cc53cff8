import { expect, test } from 'vitest'
import type { Waiting } from '../entry/waiting.ts'
import type { Standing } from '../offline/queue-words.ts'
import { sayNotCounted } from './say-not-counted.ts'

const one = (id: string, rest: Partial<Waiting> = {}): Waiting => ({
  entry: { id, at: '2026-11-28T08:00:00Z', kind: 'reading', sump: 's1', brix: 3 },
  label: id,
  problem: null,
  fault: null,
  taken: null,
  ...rest,
})
const arrived = one('a', { taken: { at: 0, heldFor: null } })

const said = (all: readonly Waiting[], sending: string[] = [], rest: Partial<Standing> = {}) =>
  sayNotCounted({
    view: { all, sending: new Set(sending), onPage: new Set(), trouble: null },
    photos: 0,
    reach: { state: 'in-reach' },
    staysOffLine: false,
    clockAhead: 0,
    ...rest,
  })

test('what the book has is counted, and nothing is said of it', () => {
  expect(said([])).toBe('')
  expect(said([arrived])).toBe('')
})

test('what waits, and what was not taken, is named with its number', () => {
  expect(said([arrived, one('b')])).toContain('One entry waits on this device')
  expect(said([one('b'), one('c', { problem: { title: 'no' } })])).toContain('2 entries wait on this device')
})

test('for the moment of sending nothing is said, unless the book is out of reach', () => {
  expect(said([one('b')], ['b'])).toBe('')
  expect(said([one('b')], ['b'], { reach: { state: 'out-of-reach', said: null } })).toContain('One entry')
})
