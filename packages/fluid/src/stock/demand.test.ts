import { expect, test } from 'vitest'
import { demandOf, weeklyUse } from './demand.ts'
import { demandPattern } from './demand-pattern.ts'
import { intermittentDemand } from './intermittent.ts'

const day = (on: number, litres: number) => ({ from: on, to: on, litres })
const weekly = (litres: readonly number[]) => litres.map((amount, week) => day(7 * week + 3, amount))

test('weeks are whole and end yesterday; what is before them or from today on does not count', () => {
  const uses = [day(0, 100), day(3, 7), day(10, 20), day(16, 5), day(17, 50)]
  expect(weeklyUse(uses, { firstDay: 1, today: 17 })).toEqual([7, 25])
})

test('what a count found missing is spread evenly over its days', () => {
  expect(weeklyUse([{ from: 0, to: 13, litres: 28 }], { firstDay: 0, today: 14 })).toEqual([14, 14])
  expect(weeklyUse([{ from: 7, to: 20, litres: 28 }], { firstDay: 0, today: 14 })).toEqual([0, 14])
})

test('the mean of a week is spread over seven days, and known the better the more weeks there are', () => {
  const demand = demandOf(weekly([20, 22, 18, 20, 22, 18, 20, 22]), { firstDay: 0, today: 56 })!
  // mean 20.25; squared deviations .0625 3.0625 5.0625 .0625 3.0625 5.0625 .0625 3.0625 sum 19.5, /7 = 2.785714, sd 1.669046
  expect(demand.pattern).toBe('steady')
  expect(demand.dailyMean).toBeCloseTo(20.25 / 7, 12)
  expect(demand.dailySd).toBeCloseTo(1.669046 / Math.sqrt(7), 6)
  expect(demand.dailyMeanSd).toBeCloseTo(1.669046 / Math.sqrt(8) / 7, 6)
  expect(demand).toMatchObject({ weeks: 8, isFirstGuess: false, idleWeeks: 0 })
})

test('where most weeks have none, the rate is that of sizes and intervals', () => {
  const series = [0, 0, 5, 0, 0, 3, 0, 4, 3, 0]
  const demand = demandOf(weekly(series), { firstDay: 0, today: 70 })!
  expect(demand.pattern).toBe('now-and-then')
  expect(demand.dailyMean).toBeCloseTo(intermittentDemand(series, 0.1)!.corrected / 7, 12)
  expect(demand.idleWeeks).toBe(1)
})

test('a few weeks are a first guess, one week knows its spread as its own size, none is unknown', () => {
  const one = demandOf([day(2, 14)], { firstDay: 0, today: 7 })!
  expect(one).toMatchObject({ weeks: 1, isFirstGuess: true, dailyMean: 2, dailyMeanSd: 2 })
  expect(demandOf([day(2, 14)], { firstDay: 0, today: 6 })).toBeNull()
  expect(demandOf([], { firstDay: 0, today: 70 })).toBeNull()
})

test('only the last 26 weeks count', () => {
  const long = weekly([...Array(10).fill(1000), ...Array(26).fill(7)])
  expect(demandOf(long, { firstDay: 0, today: 252 })).toMatchObject({ weeks: 26, dailyMean: 1 })
})

test.each([
  [[1, 1, 1, 1], 'steady'],
  [[1, 0, 1, 0], 'now-and-then'],
  [[1, 10, 1, 1], 'uneven'],
  [[1, 0, 10, 0, 1, 1, 0, 0], 'lumpy'],
] as const)('%j is used %s', (used, pattern) => {
  expect(demandPattern(used)?.pattern).toBe(pattern)
})

test('the bounds belong to the upper class', () => {
  // 33 periods, 25 used: 1.32 on the bound; amounts 3 and 17: mean 10, variance 49, variation² 0.49 on the bound
  expect(demandPattern([...Array(25).fill(1), ...Array(8).fill(0)])?.pattern).toBe('now-and-then')
  expect(demandPattern([...Array(26).fill(1), ...Array(8).fill(0)])?.pattern).toBe('steady')
  expect(demandPattern([3, 17])).toMatchObject({ pattern: 'uneven', variation2: 0.49 })
  expect(demandPattern([4, 17])?.pattern).toBe('steady')
})

test('nothing used has no pattern, an amount below nothing is refused', () => {
  expect(demandPattern([0, 0])).toBeNull()
  expect(intermittentDemand([0, 0], 0.1)).toBeNull()
  expect(() => demandPattern([-1])).toThrow('used is -1')
  expect(() => intermittentDemand([-1], 0.1)).toThrow('used is -1')
  expect(() => intermittentDemand([1], 0)).toThrow('alpha is 0')
})

test('a fluid of which a drum goes now and then is looked at for longer', () => {
  // Two drums in 40 weeks, none in the last 26: 400 L / 40; two uses have no interval, and the first in week 1 would say 200 a week
  const demand = demandOf([day(3, 200), day(73, 200)], { firstDay: 0, today: 280 })!
  expect(demand).toMatchObject({ weeks: 40, interval: 20, idleWeeks: 29 })
  expect(demand.dailyMean).toBeCloseTo(10 / 7, 12)
})

test('the one drum that was opened on the first days is not lost between them and the first whole week', () => {
  // 200 L in 23 days; three whole weeks end yesterday, and the use lies before them
  expect(demandOf([day(1, 200)], { firstDay: 0, today: 23 })).toMatchObject({ dailyMean: 200 / 23, weeks: 3 })
})
