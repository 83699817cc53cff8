import { expect, test } from 'vitest'
import { edges } from './edges.ts'

const [early, middle, late] = ['2026-01-01T00:00:00.000Z', '2026-02-01T00:00:00.000Z', '2026-03-01T00:00:00.000Z']
const place = (at: string) => ({ at, rank: 1, id: 'a' })

test('without an entry to read on from both edges count', () => {
  expect(edges({ order: 'time', since: early, until: late })).toEqual({ since: early, until: late })
  expect(edges({ order: 'time' })).toEqual({})
})

test('reading on in time, the place read up to stands for the first edge', () => {
  expect(edges({ order: 'time', since: early, until: late, after: place(middle) })).toEqual({ until: late })
  expect(edges({ order: 'time', since: early, until: late, after: place(early) })).toEqual({ until: late })
})

test('reading on backwards it stands for the last edge', () => {
  expect(edges({ order: 'time-backwards', since: early, until: late, after: place(middle) })).toEqual({ since: early })
  expect(edges({ order: 'time-backwards', since: early, until: late, after: place(late) })).toEqual({ since: early })
})

test('a place outside of the edges stands for none', () => {
  expect(edges({ order: 'time', since: middle, after: place(early) })).toEqual({ since: middle })
  expect(edges({ order: 'time-backwards', until: middle, after: place(late) })).toEqual({ until: middle })
})

test('a place in the order of arrival says nothing of instants', () => {
  expect(edges({ order: 'arrival', since: early, until: late, after: { seq: 3 } })).toEqual({
    since: early,
    until: late,
  })
})
