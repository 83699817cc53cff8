import { expect, test } from 'vitest'
import { dispense } from './containers.ts'
import { makePour } from './mix.ts'

const bucket = { name: 'bucket', capacity: 12, graduation: 1 }

// 60 L at 13 %: 7.8 L concentrate and 52.2 L water; to the litre 8 and 52, that is 13.33 %.
test('a pour becomes whole buckets, a rest to the nearest mark, and the concentrate to its nearest mark', () => {
  const measured = dispense(makePour(60, 13), bucket)
  expect(measured).toMatchObject({ fullWater: 4, restWater: 4, concentrate: 8, buckets: 6, volume: 60 })
  expect(measured.strength).toBeCloseTo(100 * (8 / 60), 10)
})

test('a tie goes to the lower mark', () => {
  expect(dispense(makePour(10.5, 0), bucket)).toMatchObject({ fullWater: 0, restWater: 10, concentrate: 0 })
})

test('a whole number of buckets leaves no rest', () => {
  expect(dispense(makePour(36, 0), bucket)).toMatchObject({ fullWater: 3, restWater: 0, buckets: 3 })
})

test('without marks half litres are judged by eye', () => {
  expect(dispense(makePour(10.7, 0), { name: 'can', capacity: 20 })).toMatchObject({ restWater: 10.5 })
})

test('a bucket without a bottom is refused by name', () => {
  expect(() => dispense(makePour(10, 5), { name: 'x', capacity: 0 })).toThrow('capacity is 0, expected above 0')
  expect(() => dispense(makePour(10, 5), { name: 'x', capacity: 1, graduation: 2 })).toThrow(/^graduation is 2/)
})

// 0.57 L of concentrate: a bucket with marks at every litre gives 1 L, a jug with marks at every tenth 0.6 L.
test('the concentrate is measured in the jug where there is one', () => {
  const pour = makePour(100, 0.57)
  expect(dispense(pour, bucket).concentrate).toBe(1)
  expect(dispense(pour, bucket, { name: 'jug', capacity: 1, graduation: 0.1 }).concentrate).toBeCloseTo(0.6, 10)
})

test('nothing to pour is nothing in the bucket', () => {
  expect(dispense(makePour(0.1, 5), bucket)).toMatchObject({
    fullWater: 0,
    restWater: 0,
    concentrate: 0,
    buckets: 0,
    strength: 0,
  })
})
