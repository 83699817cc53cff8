import { expect, test } from 'vitest'
import { type Analysis, driftOf, instantOf, isYoungest, presentAfter } from './analyses.ts'

const tap = { id: 'tap', name: 'Tap water', hardness: 260, chloride: 32 }
const analysis = (at: string, hardness?: number): Analysis => ({
  id: at,
  at,
  kind: 'analysis',
  about: { kind: 'water', id: 'tap' },
  ...(hardness === undefined ? {} : { hardness }),
})

test('the book goes on to reckon with what was measured, and remembers what it reckoned with', () => {
  expect(presentAfter(tap, { hardness: 280, chloride: 32, nitrate: 9 })).toEqual({
    changes: { hardness: 280, nitrate: 9 },
    was: { hardness: 260, nitrate: null },
  })
  expect(presentAfter(tap, { hardness: 260 })).toBeNull()
})

test('an analysis is the youngest where none is younger', () => {
  const all = [analysis('2026-01-01T08:00:00Z'), analysis('2026-02-01T08:00:00Z')]
  expect(isYoungest('2026-02-01T09:00:00+01:00', all)).toBe(true)
  expect(isYoungest('2026-02-01T08:59:00+01:00', all)).toBe(false)
  expect(isYoungest('2020-01-01T00:00:00Z', [])).toBe(true)
})

test('a figure’s course over the analyses leaves out those that lack it', () => {
  expect(driftOf([analysis('a', 270), analysis('b'), analysis('c', 255)], 'hardness')).toEqual({
    first: 270,
    last: 255,
    low: 255,
    high: 270,
    n: 2,
  })
  expect(driftOf([analysis('a')], 'hardness')).toBeNull()
})

test('an analysis of today is of now, one of another day of its noon', () => {
  const now = '2026-11-25T08:30:00.000+01:00'
  expect(instantOf('2026-11-25', '2026-11-25', now)).toBe(now)
  expect(instantOf('2026-11-20', '2026-11-25', now)).toBe('2026-11-20T12:00:00+01:00')
})
