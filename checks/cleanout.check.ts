/**
 * Cleaning out: what rinses leave, the fresh charge with its heel, jobs side by side, days on which upkeep is due.
 *
 * Rinses: plain mass balance, 10 L held back, filled to 200 L: 5 %, 0.25 %, 0.0125 % after one, two, three fillings.
 * Charges: hand arithmetic, shown at each case. Tolerance: rounding of doubles.
 * Jobs side by side: S. M. Johnson's two-machine rule with the five jobs that introductions to it use, and the 6 × 6 job shop of H. Fisher and
 * G. L. Thompson (1963, "ft06", shortest 55); data of both from memory, each optimum known from outside of this code.
 * Days: calendar arithmetic by hand; 2026-03-02 is a Monday.
 */
import { expect, test } from 'vitest'
import {
  type CleanoutAsked,
  cleanoutCost,
  cleanoutQuantities,
  cleanoutSheet,
  dueDay,
  firstWater,
  type ParallelJob,
  parallelPlan,
  punctuality,
} from '../packages/fluid/src/index.ts'

const asked: CleanoutAsked = {
  volume: 200,
  heldBack: 10,
  cleanerPercent: 2,
  rinsePercent: 2,
  rinseFraction: 1,
  rinses: 2,
  target: 8,
}
const quantitiesOf = (more: Partial<CleanoutAsked> = {}) => {
  const found = cleanoutQuantities({ ...asked, ...more })
  if (found.outcome !== 'quantities') throw new Error(found.outcome)
  return found
}

test.each([
  [0, 5],
  [1, 0.25],
  [2, 0.0125],
])(
  'the cleaner and %d rinses to the mark, 10 L held back of 200, leave %d percent of the old fluid',
  (rinses, percent) => {
    expect(quantitiesOf({ rinses }).afterRinses.oldFluid).toBeCloseTo(percent, 12)
  },
)

test.each([
  // (190 × 2 %) / 200 = 1.9 %; one rinse to the mark leaves a twentieth, 0.095 %; two 0.00475 %
  [0, 1.9],
  [1, 0.095],
  [2, 0.00475],
])('of the cleaner, 2 percent as poured, %d rinses to the mark leave %d percent', (rinses, percent) => {
  expect(quantitiesOf({ rinses }).afterRinses.cleaner).toBeCloseTo(percent, 12)
})

test('a part charge of 80 L onto 10 L leaves a ninth: 5 % become 0.5556 %', () => {
  // 5 × 10 / 90 = 0.55556; cleaner 1.9 × 10 / 90 = 0.21111
  const { afterRinses } = quantitiesOf({ rinses: 1, rinseFraction: 0.4 })
  expect(afterRinses.oldFluid).toBeCloseTo(0.55556, 5)
  expect(afterRinses.cleaner).toBeCloseTo(0.21111, 5)
})

test('the fresh charge meets its target with the rinse in the heel', () => {
  // Heel after 80 L at 2 % onto 10 L without any: 160 / 90 = 1.7778 %; (200 × 8 − 10 × 1.7778) / 190 = 8.327485 %
  const { charge, fills } = quantitiesOf({ rinses: 1, rinseFraction: 0.4 })
  expect(charge.strength).toBeCloseTo(8.327485, 6)
  // 190 L × 8.327485 % = 15.82222 L concentrate in 174.17778 L water
  expect(charge.concentrate).toBeCloseTo(15.82222, 5)
  expect(charge.water).toBeCloseTo(174.17778, 5)
  // Concentrate by hand: 15.82222 L + 10 L × 1.7778 % = 16 L = 8 % of 200 L
  expect(fills.at(-1)!.contents.fluid).toBeCloseTo(8, 12)
})

test('without a rinse the heel thins the charge: 8 % of 200 L from 190 L takes 8.4211 %', () => {
  expect(quantitiesOf({ rinses: 0 }).charge.strength).toBeCloseTo(8.421053, 6)
})

test('waste is every drain: 190 + 190 + 80 litres', () => {
  expect(quantitiesOf({ rinses: 1, rinseFraction: 0.4 }).waste).toBeCloseTo(460, 9)
  // without a heel: 200 + 200 + 2 × 200
  expect(quantitiesOf({ heldBack: 0 }).waste).toBeCloseTo(800, 9)
})

test('what is poured and what is drained come to what is left: no litre of cleaner or fluid is lost', () => {
  // Cleaner: poured 190 × 2 % = 3.8 L. Drained 190 L at 1.9 % = 3.61 L, then 80 L at 0.21111 % = 0.168889 L; left 10 L at 0.21111 % = 0.021111 L
  const { fills, drained, afterRinses } = quantitiesOf({ rinses: 1, rinseFraction: 0.4 })
  const out = (drained[1]! * fills[0]!.contents.cleaner + drained[2]! * fills[1]!.contents.cleaner) / 100
  expect(out).toBeCloseTo(3.61 + 0.168889, 6)
  expect(out + (10 * afterRinses.cleaner) / 100).toBeCloseTo(3.8, 12)
})

test('litres, hours and prices by hand', () => {
  const sheet = cleanoutSheet({
    ...asked,
    rinses: 1,
    rinseFraction: 0.4,
    hours: 4,
    solids: 'little',
    metals: [],
    enterable: false,
    foul: false,
    fillPerHour: 1000,
    changeOver: null,
  })
  if (sheet.outcome !== 'sheet') throw new Error(sheet.outcome)
  // A pump of 1800 L/h: 0.25 + 190/1800 twice and 0.25 + 80/1800 once; fillings 190/1000 twice and 80/1000.
  // Skim 0.5, lock 0.25, sludge 1, cleaner 4, rinse run 0.5, check 0.25, charge run 0.5, readings 0.25.
  const drains = 3 * 0.25 + (190 + 190 + 80) / 1800
  const fills = (190 + 190 + 80) / 1000
  const hours = drains + fills + 0.5 + 0.25 + 1 + 4 + 0.5 + 0.25 + 0.5 + 0.25
  expect(sheet.downtimeHours).toBeCloseTo(hours, 9)
  expect(sheet.labourHours).toBeCloseTo(hours - 4 - 0.19, 9)
  // 3.8 L cleaner × 6 + (1.6 + 15.82222) L concentrate × 4 + (186.2 + 78.4 + 174.17778) L water × 0.01 + 460 L waste × 0.5
  const prices = { cleaner: 6, concentrate: 4, water: 0.01, waste: 0.5 }
  expect(cleanoutCost(sheet, prices)).toBeCloseTo(22.8 + 69.68889 + 4.3877778 + 230, 4)
})

test('the first fill at 6 % with water of 200 mg/L has 188 mg/L, and a blend reaches a limit of 150 exactly', () => {
  const tap = { id: 'tap', kind: 'tap', hardness: 200 } as const
  const di = { id: 'di', kind: 'deionised', hardness: 0 } as const
  expect(firstWater([di, tap], { low: 150, high: 250, strength: 6 })).toEqual({
    outcome: 'fits',
    water: 'tap',
    hardness: 188,
  })
  // 0.94 × 200 × share = 120 → share 0.638298
  expect(firstWater([di, tap], { low: 120, high: 150, strength: 6 })).toMatchObject({
    outcome: 'blend',
    water: 'tap',
    with: 'di',
    share: expect.closeTo(0.638298, 6),
    hardness: 120,
  })
})

const twoMachines = (id: string, first: number, second: number): ParallelJob => ({
  id,
  stretches: [
    { name: 'first', hours: first, needs: { a: 1 } },
    { name: 'second', hours: second, needs: { b: 1 } },
  ],
})

test('five jobs through two machines: Johnson’s order C A D E B ends after 20.5 hours', () => {
  const jobs = [
    twoMachines('A', 3.2, 4.2),
    twoMachines('B', 4.7, 1.5),
    twoMachines('C', 2.2, 5),
    twoMachines('D', 5.8, 4),
    twoMachines('E', 3.1, 2.8),
  ]
  // By hand, first machine: C 2.2, A 5.4, D 11.2, E 14.3, B 19.0; second: C 2.2–7.2, A –11.4, D –15.4, E –18.2, B 19.0–20.5.
  const plan = parallelPlan({ jobs, capacity: { a: 1, b: 1 } })
  expect(plan.finish).toBeCloseTo(20.5, 9)
  expect(plan.exact).toBe(true)
})

test('six jobs through six machines: no bound is above, and no plan below, the known shortest of 55', () => {
  const table = [
    [2, 1, 0, 3, 1, 6, 3, 7, 5, 3, 4, 6],
    [1, 8, 2, 5, 4, 10, 5, 10, 0, 10, 3, 4],
    [2, 5, 3, 4, 5, 8, 0, 9, 1, 1, 4, 7],
    [1, 5, 0, 5, 2, 5, 3, 3, 4, 8, 5, 9],
    [2, 9, 1, 3, 4, 5, 5, 4, 0, 3, 3, 1],
    [1, 3, 3, 3, 5, 9, 0, 10, 4, 4, 2, 1],
  ]
  const jobs = table.map((row, j) => ({
    id: `job ${j + 1}`,
    stretches: Array.from({ length: 6 }, (_, s) => ({
      name: `${s + 1}`,
      hours: row[2 * s + 1]!,
      needs: { [`m${row[2 * s]}`]: 1 },
    })),
  }))
  const capacity = { m0: 1, m1: 1, m2: 1, m3: 1, m4: 1, m5: 1 }
  const plan = parallelPlan({ jobs, capacity })
  expect(plan.lowerBound).toBeLessThanOrEqual(55)
  expect(plan.finish).toBeGreaterThanOrEqual(55)
  // The bound that comes with it holds: at most a fifth too long.
  expect(plan.finish).toBeLessThanOrEqual(66)
})

test('one person and one pump, two alike machines: 1 h drain, 4 h cleaner alone, 1 h drain end after 7 hours', () => {
  // By hand: drain A 0–1, drain B 1–2, cleaner A 1–5, B 2–6, drain A 5–6, drain B 6–7. Nothing shorter: B cannot begin before 1, and takes 6.
  const machine = (id: string): ParallelJob => ({
    id,
    stretches: [
      { name: 'drain', hours: 1, needs: { person: 1, 'pump-out': 1 } },
      { name: 'cleaner', hours: 4, needs: {} },
      { name: 'drain', hours: 1, needs: { person: 1, 'pump-out': 1 } },
    ],
  })
  const plan = parallelPlan({ jobs: [machine('a'), machine('b')], capacity: { person: 1, 'pump-out': 1 } })
  expect(plan).toMatchObject({ finish: 7, downtime: 12, exact: true })
})

const dayOf = (text: string) => Date.parse(`${text}T00:00:00Z`) / 86_400_000
const textOf = (day: number) => new Date(day * 86_400_000).toISOString().slice(0, 10)
const week = { workDays: [1, 2, 3, 4, 5], shutdowns: [] as { from: number; to: number }[] }

test.each([
  ['2026-03-02', 7, '2026-03-09', 'Monday to Monday'],
  ['2026-03-02', 14, '2026-03-16', 'two weeks'],
  ['2026-03-02', 5, '2026-03-06', 'Saturday the 7th goes back to Friday the 6th'],
  ['2026-03-05', 30, '2026-04-03', 'Saturday 4 April goes back to Friday 3 April'],
  ['2026-02-27', 1, '2026-03-02', 'Friday and a day: none of the weekend, so Monday'],
])('done on %s, every %d days: due on %s (%s)', (lastOn, everyDays, due) => {
  expect(textOf(dueDay({ lastOn: dayOf(lastOn), everyDays, from: 0 }, week))).toBe(due)
})

test('a shutdown moves the day before it, or behind it where nothing lies between', () => {
  const shutdowns = [{ from: dayOf('2026-12-24'), to: dayOf('2027-01-01') }]
  const due = (lastOn: string, everyDays: number) =>
    textOf(dueDay({ lastOn: dayOf(lastOn), everyDays, from: 0 }, { ...week, shutdowns }))
  // 21 December and 7 days is the 28th, shut: the last working day before is the 23rd. From the 23rd nothing lies between: Monday 4 January.
  expect(due('2026-12-21', 7)).toBe('2026-12-23')
  expect(due('2026-12-23', 7)).toBe('2027-01-04')
})

test('five weekly times, each a day later than the last, are late by 0, 1, 2, 3, 4 days and slip', () => {
  // Without days off, so that each day is due by itself.
  const always = { workDays: [1, 2, 3, 4, 5, 6, 7], shutdowns: [] }
  const days = [0, 7, 15, 24, 34, 45]
  expect(punctuality(days, 7, always)).toEqual({ times: 5, late: 4, medianDaysLate: 2, slipping: true })
})
