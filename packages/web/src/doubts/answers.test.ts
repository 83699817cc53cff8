import { expect, test } from 'vitest'
import type { DoubtAnswer } from '../api/types.ts'
import { draftOf, storiesOf } from './answers.ts'

const doubt: DoubtAnswer = {
  kind: 'unlogged-addition',
  entry: 'e3',
  entries: ['e3'],
  at: '2026-03-03T09:00:00.000Z',
  probability: 0.6,
  volume: 40,
  found: { quantity: 'brix', read: 6.1, expected: 5, low90: 4.7, high90: 5.3 },
  text: '',
  open: true,
  others: [
    { kind: 'misread', probability: 0.3 },
    { kind: 'stands', probability: 0.1 },
  ],
}

test('every story has the way in which it is settled, likeliest first; that nothing is wrong is none of them', () => {
  expect(storiesOf(doubt)).toEqual([
    { kind: 'unlogged-addition', probability: 0.6, volume: 40, settling: { by: 'entry', what: 'mix' } },
    { kind: 'misread', probability: 0.3, volume: null, settling: { by: 'aside', reason: 'misread' } },
  ])
})

test('what several readings have in common is settled by a verdict', () => {
  const round: DoubtAnswer = { ...doubt, kind: 'instrument', entry: null, entries: ['a', 'b', 'c'], volume: null }
  expect(storiesOf(round).map(({ settling }) => settling.by)).toEqual(['verdict', 'verdict'])
})

test('what is missing is supposed to have been poured at the visit before, with the litres that the doubt says', () => {
  const [story] = storiesOf({ ...doubt, volume: -40 })
  const entries = [
    { id: 'e1', kind: 'reading', at: '2026-02-27T09:00:00.000Z' },
    { id: 'e2', kind: 'addition', at: '2026-02-27T09:05:00.000Z' },
    { id: 'e3', kind: 'reading', at: '2026-03-03T09:00:00.000Z' },
    { id: 'e4', kind: 'reading', at: '2026-03-03T12:00:00.000Z' },
  ]
  expect(draftOf(story!, doubt, entries)).toEqual({
    what: 'mix',
    litres: 40,
    at: Date.parse('2026-02-27T09:06:00.000Z'),
  })
  expect(draftOf(story!, doubt, []).at).toBe(Date.parse('2026-03-03T08:00:00.000Z'))
})
