import { expect, test } from 'vitest'
import { type SaidUpkeep, sayUpkeep } from './upkeep.ts'

const said = (more: Partial<SaidUpkeep> = {}) =>
  sayUpkeep({
    everyDays: 7,
    sinceDays: 3,
    dueInDays: 4,
    times: 0,
    late: 0,
    medianDaysLate: null,
    slipping: null,
    ...more,
  })

test('a rhythm, when it was done and when it is due', () => {
  expect(said()).toBe('Every 7 days, last done 3 days ago; due in 4 days.')
  expect(said({ everyDays: 1, sinceDays: 0, dueInDays: 1 })).toBe('Every day, done today; due tomorrow.')
  expect(said({ sinceDays: null, dueInDays: 0 })).toBe('Every 7 days, not written down yet; due today.')
  expect(said({ sinceDays: 8, dueInDays: -1 })).toBe('Every 7 days, last done 8 days ago; 1 day over.')
})

test('slipping is said before mere lateness', () => {
  expect(said({ times: 6, late: 4, slipping: true })).toContain('It comes later each time.')
  expect(said({ times: 6, late: 4, slipping: false })).toContain('Late 4 of the last 6 times.')
  expect(said({ times: 6, late: 3, slipping: false })).not.toContain('Late')
})
