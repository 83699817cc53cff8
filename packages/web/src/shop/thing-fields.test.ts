import { expect, test } from 'vitest'
import {
  allFields,
  changeOf,
  faultsAtFields,
  firstDayFields,
  idFor,
  newSumpFields,
  nextSump,
  readFields,
  textsOf,
  thingFrom,
} from './thing-fields.ts'

test('a new fluid is told with its band, and without what is not known', () => {
  const read = readFields(
    {
      name: 'Blue 40',
      class: 'semi-synthetic',
      brixFactor: '1,6',
      'limits.concentration.low': '6',
      'limits.concentration.target': '8',
      'limits.concentration.high': '10 %',
    },
    firstDayFields.fluid,
    'metric',
  )
  if ('faults' in read) throw new Error(JSON.stringify(read.faults))
  expect(thingFrom(read.values)).toEqual({
    name: 'Blue 40',
    class: 'semi-synthetic',
    brixFactor: 1.6,
    limits: { concentration: { low: 6, target: 8, high: 10 } },
  })
})

test('a missing name, a factor of nothing and a target above its band are faults at their fields', () => {
  const read = readFields(
    {
      brixFactor: '0',
      'limits.concentration.low': '6',
      'limits.concentration.target': '12',
      'limits.concentration.high': '10',
    },
    firstDayFields.fluid,
    'metric',
  )
  expect(read).toEqual({
    faults: {
      name: { found: 'nothing', expected: 'a name' },
      brixFactor: { found: '0', expected: 'above 0 and at most 20' },
      'limits.concentration.target': { found: '12 %', expected: 'at most the upper end of the band, 10 %' },
    },
  })
})

test('a volume is typed in the shop’s unit and kept in litres', () => {
  const read = readFields({ name: 'Mill 7', fillVolume: '80' }, firstDayFields.sump, 'us')
  // 80 × 3.785411784 L
  expect(read).toMatchObject({ values: { fillVolume: expect.closeTo(302.83294272, 8) } })
})

test('a volume that nobody touched keeps every digit it had', () => {
  const sump = { id: 'mill-7', name: 'Mill 7', fillVolume: 302.83294272, capacity: 333.333 }
  const texts = { ...textsOf(sump, allFields.sump, 'us'), place: 'bay C' }
  const read = readFields(texts, allFields.sump, 'us', sump)
  if ('faults' in read) throw new Error(JSON.stringify(read.faults))
  expect(changeOf(sump, read.values)).toEqual({ changes: { place: 'bay C' }, was: { place: null } })
})

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

test('a mark above the brim is refused at the mark', () => {
  expect(readFields({ name: 'S', fillVolume: '200', capacity: '180' }, allFields.sump, 'metric')).toEqual({
    faults: { fillVolume: { found: '200 L', expected: 'at most the brim, 180 L' } },
  })
})

test('the server’s faults go to their fields', () => {
  const { at, rest } = faultsAtFields(
    [
      { pointer: '/changes/limits/concentration/low', found: '7', expected: 'low ≤ target ≤ high' },
      { pointer: '/at', found: 'tomorrow', expected: 'not after now' },
    ],
    firstDayFields.fluid,
  )
  expect(Object.keys(at)).toEqual(['limits.concentration.low'])
  expect(rest).toEqual(['/at: found tomorrow, expected not after now'])
})

test('a name becomes an id of plain letters; one that is taken gets a number', () => {
  expect(idFor('Fräse 7', new Set(), 'sump')).toBe('frase-7')
  expect(idFor('Mill 7', new Set(['mill-7']), 'sump')).toBe('mill-7-2')
  expect(idFor('七', new Set(['sump']), 'sump')).toBe('sump-2')
})

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

test('a new sump’s form has all fields of a sump, some of them folded away', () => {
  const paths = [...newSumpFields.first, ...newSumpFields.later].map(({ path }) => path)
  expect(newSumpFields.first.map(({ path }) => path)).toEqual(['name', 'fillVolume'])
  expect(paths.toSorted()).toEqual(allFields.sump.map(({ path }) => path).toSorted())
})
