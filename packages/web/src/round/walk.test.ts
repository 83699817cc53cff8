import { expect, test } from 'vitest'
import { markDone, newWalk, nextStop, walkOn } from './walk.ts'

const sumps = ['a', 'b', 'c', 'd'].map((sump) => ({ sump }))
const morning = Date.parse('2026-11-25T07:00:00Z')
const hours = (n: number) => n * 3_600_000

test('a round goes on from where one stands', () => {
  expect(nextStop(sumps, newWalk, null)).toBe('a')
  expect(nextStop(sumps, markDone(newWalk, 'b', 'read', morning), 'b')).toBe('c')
})

test('what was passed by comes after the last one', () => {
  const walk = markDone(markDone(newWalk, 'c', 'read', morning), 'd', 'locked', morning)
  expect(nextStop(sumps, walk, 'd')).toBe('a')
})

test('a round is done when every sump was visited', () => {
  const walk = ['a', 'b', 'c', 'd'].reduce((w, sump) => markDone(w, sump, 'read', morning), newWalk)
  expect(nextStop(sumps, walk, 'd')).toBe(null)
})

test('eight hours without an entry end a round; just under, it goes on', () => {
  const walk = markDone(newWalk, 'a', 'read', morning)
  expect(walkOn(walk, morning + hours(8))).toBe(walk)
  expect(walkOn(walk, morning + hours(8) + 1)).toBe(newWalk)
  expect(markDone(walk, 'b', 'read', morning + hours(24)).done).toEqual({ b: 'read' })
})
