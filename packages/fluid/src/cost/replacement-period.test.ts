import { expect, test } from 'vitest'
import { replacementPeriod } from './replacement-period.ts'

test('the average is that of change and keeping together, and the first least one counts', () => {
  // (10 + 1) / 1, (10 + 1 + 1) / 2, (10 + 1 + 1 + 6) / 3 = 6: as much as after two.
  expect(replacementPeriod({ changeCost: 10, running: [1, 1, 6] })).toEqual({
    period: 2,
    average: 6,
    averages: [11, 6, 6],
    stillFalling: false,
  })
})

test('an average that still falls at the end of the list is said to', () => {
  expect(replacementPeriod({ changeCost: 10, running: [1, 1] })).toMatchObject({ period: 2, stillFalling: true })
  expect(replacementPeriod({ changeCost: 10, running: [1] })).toMatchObject({ period: 1, stillFalling: false })
})

test('no period, or a cost that is none, is refused by name', () => {
  expect(() => replacementPeriod({ changeCost: 10, running: [] })).toThrow('running is 0')
  expect(() => replacementPeriod({ changeCost: -1, running: [1] })).toThrow('changeCost is -1')
  expect(() => replacementPeriod({ changeCost: 1, running: [1, Number.NaN] })).toThrow('running.1 is NaN')
})
