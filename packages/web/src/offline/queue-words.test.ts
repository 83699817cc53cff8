import { expect, test } from 'vitest'
import type { Waiting } from '../entry/waiting.ts'
import { queueWords, type Standing, sayPhotos, sayStanding, sayState } from './queue-words.ts'

const one = (n: number, rest: Partial<Waiting> = {}): Waiting => ({
  entry: { id: `0190000${n}`, at: '2026-11-28T08:00:00Z', kind: 'reading', sump: 's1', brix: 3 },
  label: `reading ${n}`,
  problem: null,
  fault: null,
  taken: null,
  ...rest,
})
const taken = one(1, { taken: { at: 0, heldFor: null } })
const held = one(2, { taken: { at: 0, heldFor: 'a keeper' } })
const refused = one(3, { problem: { title: 'no' } })

const standing = (all: readonly Waiting[], rest: Partial<Standing> = {}, onPage: string[] = []): Standing => ({
  view: { all, sending: new Set(), onPage: new Set(onPage), trouble: null },
  photos: 0,
  reach: { state: 'in-reach' },
  staysOffLine: false,
  clockAhead: 0,
  ...rest,
})
const out = { reach: { state: 'out-of-reach', said: null } } as const

test('all saved is said only of a device that has nothing left and whose book answers', () => {
  expect(queueWords(standing([])).words).toBe('all saved')
  expect(queueWords(standing([taken, held])).words).toBe('all saved')
  expect(queueWords(standing([], out)).words).toBe('out of reach')
  expect(queueWords(standing([], { staysOffLine: true })).words).toBe('off line')
})

test('with all entries in the book and a photo still here, all is not said to be saved', () => {
  expect(queueWords(standing([taken], { photos: 1 })).words).toBe('1 photo waiting')
  expect(queueWords(standing([taken], { photos: 2, ...out })).words).toBe('2 photos waiting')
  expect(queueWords(standing([one(4)], { photos: 1 })).words).toBe('1 waiting')
})

test('what asks for a person comes before what only waits', () => {
  const all = [one(4), refused, one(5)]
  expect(queueWords(standing(all, {}, ['01900004'])).words).toBe('1 in this page only')
  expect(queueWords(standing(all)).words).toBe('1 not taken')
  expect(queueWords(standing([one(4), one(5)])).words).toBe('2 waiting')
  expect(queueWords(standing([one(4), one(5)], { staysOffLine: true })).words).toBe('off line · 2 wait')
})

test('a clock that is off is said where nothing more urgent is, and not before it matters', () => {
  const minute = 60_000
  expect(queueWords(standing([], { clockAhead: 14 * minute }))).toEqual({ words: 'clock off', kind: 'do' })
  expect(queueWords(standing([], { clockAhead: -14 * minute })).words).toBe('clock off')
  expect(queueWords(standing([], { clockAhead: minute })).words).toBe('all saved')
  expect(queueWords(standing([], { clockAhead: null })).words).toBe('all saved')
  expect(queueWords(standing([one(4)], { clockAhead: 14 * minute })).words).toBe('1 waiting')
})

test('each entry says where it is', () => {
  const said = (entry: Waiting, rest: Partial<Standing> = {}) => sayState(entry, standing([entry], rest))
  expect(said(taken)).toBe('in the book')
  expect(said(held)).toBe('in the book, counts later: a keeper')
  expect(said(refused)).toBe('not taken')
  expect(said(one(4))).toBe('waits')
  expect(said(one(4), out)).toBe('waits until the book is in reach')
  expect(said(one(4), { staysOffLine: true })).toBe('waits until you are on line again')
  expect(said(one(4, { fault: '500 broken' }))).toContain('500 broken')
})

test('a server that said something is quoted', () => {
  const said = { state: 'out-of-reach', said: '507 there is no room' } as const
  expect(sayStanding(standing([one(4)], { reach: said }))).toContain('507 there is no room')
})

test('photos that wait are counted, with what becomes of them, and are not called nothing', () => {
  expect(sayPhotos(standing([]))).toBe('')
  expect(sayPhotos(standing([], { ...out, photos: 1 }))).toBe(
    'One photo waits here. It is sent by itself once the book is in reach, and leaves this device only after that.',
  )
  expect(sayPhotos(standing([], { staysOffLine: true, photos: 2 }))).toBe(
    '2 photos wait here. They are sent once you are on line again, and leave this device only after that.',
  )
  expect(sayStanding(standing([], { photos: 1 }))).toBe('No entry waits.')
  expect(sayStanding(standing([one(4)], { photos: 1 }))).toBe('One entry waits here.')
})
