import { expect, test } from 'vitest'
import { changeOf } from './change-of.ts'

test('a changed limit keeps the limits this page does not show', () => {
  const sump = { id: 's', name: 'S', limits: { ph: { low: 8.6 }, concentration: { low: 5, target: 6 } } }
  const values = { 'limits.concentration.low': 5, 'limits.concentration.target': 7, 'limits.concentration.high': null }
  expect(changeOf(sump, values)).toEqual({
    changes: { limits: { ph: { low: 8.6 }, concentration: { low: 5, target: 7 } } },
    was: { limits: { ph: { low: 8.6 }, concentration: { low: 5, target: 6 } } },
  })
})

test('an emptied field takes its value away', () => {
  const sump = { id: 's', name: 'S', place: 'yard', limits: { concentration: { target: 6 } } }
  expect(changeOf(sump, { place: null, 'limits.concentration.target': null })).toEqual({
    changes: { place: null, limits: null },
    was: { place: 'yard', limits: { concentration: { target: 6 } } },
  })
})

test('nothing changed is no change', () => {
  const sump = { id: 's', name: 'S', place: 'yard' }
  expect(changeOf(sump, { name: 'S', place: 'yard', capacity: null })).toBe(null)
})
