import { expect, test } from 'vitest'
import { nextSump } from './next-sump.ts'

test('a new sump begins with the fluid of the last on the round and the place behind it', () => {
  const fluids = [
    { id: 'blue', name: 'Blue 40' },
    { id: 'clear', name: 'Clear 1' },
  ]
  const sumps = [
    { id: 'b', name: 'Mill 2', fluid: 'clear', order: 4, limits: { concentration: { low: 5, high: 7 } } },
    { id: 'a', name: 'Mill 1', fluid: 'blue', order: 2 },
  ]
  expect(nextSump(sumps, fluids)).toEqual({ fluid: 'clear', texts: { order: '5' } })
  // Where the last has no place on the round the next has none either, and goes by its name.
  expect(nextSump([...sumps, { id: 'c', name: 'Saw', fluid: 'blue' }], fluids)).toEqual({ fluid: 'blue', texts: {} })
})

test('the first of all sumps takes the only fluid, of two none', () => {
  expect(nextSump([], [{ id: 'blue', name: 'Blue 40' }])).toEqual({ fluid: 'blue', texts: {} })
  expect(
    nextSump(
      [],
      [
        { id: 'blue', name: 'Blue 40' },
        { id: 'c', name: 'Clear 1' },
      ],
    ).fluid,
  ).toBe('')
})
