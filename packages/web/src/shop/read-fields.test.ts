import { expect, test } from 'vitest'
import { allFields, firstDayFields } from './all-fields.ts'
import { changeOf } from './change-of.ts'
import { readFields } from './read-fields.ts'
import { textsOf } from './texts-of.ts'
import { thingFrom } from './thing-from.ts'

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

test('a meter is told with what one count of it is, and one that counts nothing is a fault', () => {
  const typed = { name: 'Hose, hall A', litresPerCount: '0,1', sump: 'mill-7', place: '' }
  const read = readFields(typed, allFields.meter, 'metric')
  if ('faults' in read) throw new Error(JSON.stringify(read.faults))
  expect(thingFrom(read.values)).toEqual({ name: 'Hose, hall A', litresPerCount: 0.1, sump: 'mill-7' })
  expect(readFields({ litresPerCount: '0' }, allFields.meter, 'metric')).toEqual({
    faults: {
      name: { found: 'nothing', expected: 'a name' },
      litresPerCount: { found: '0', expected: 'above 0' },
    },
  })
})

test('a mark above the brim is refused at the mark', () => {
  expect(readFields({ name: 'S', fillVolume: '200', capacity: '180' }, allFields.sump, 'metric')).toEqual({
    faults: { fillVolume: { found: '200 L', expected: 'at most the brim, 180 L' } },
  })
})
