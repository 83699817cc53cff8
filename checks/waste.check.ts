/**
 * Waste: codes, terms, masses.
 *
 * Codes: EU List of Waste, Commission Decision 2000/532/EC, chapter 12 01; the entries 08*, 09*, 10*, 14* and 18* and that all five are hazardous (the
 * star) were read in copies of the list.
 * Terms: 40 CFR 262.16(b) and 262.17(a): 180 and 90 days, from memory. The Gregorian calendar: days of months as everybody knows them, leap years
 * by the rule of 1582 (every fourth year, not the hundredth, but the four-hundredth).
 * Ends of terms are counted by hand beside each; months end on the day of the same number or the month's last (Regulation (EEC,
 * Euratom) 1182/71, Article 3(2)(c), from memory).
 * Masses: division by hand.
 *
 * Tolerance: none for days and codes, 1e-9 for masses.
 */
import { expect, test } from 'vitest'
import {
  codeCautions,
  dayNumber,
  dayText,
  litresOfMass,
  massOfLitres,
  termEnd,
  termProposals,
  wasteCodes,
  wasteNow,
} from '../packages/fluid/src/index.ts'

test('the codes offered are those of chapter 12 01 that a coolant’s waste may have, all of them hazardous', () => {
  expect(wasteCodes.map(({ code }) => code)).toEqual(['12 01 08*', '12 01 09*', '12 01 10*', '12 01 14*', '12 01 18*'])
})

test('08* is with halogens and 09* without', () => {
  const words = Object.fromEntries(wasteCodes.map((one) => [one.code, one.words]))
  expect(words['12 01 08*']).toMatch(/emulsions and solutions with halogens/)
  expect(words['12 01 09*']).toMatch(/emulsions and solutions without halogens/)
})

test('a synthetic that is mixed with water is never told to be 10*', () => {
  expect(codeCautions({ kind: 'emulsion', code: '12 01 10*', isUs: false })).toContain('wasteSyntheticCode')
})

test.each([
  ['40 CFR 262.17(a)', 90],
  ['40 CFR 262.16(b)', 180],
])('%s: %d days (from memory)', (source, days) => {
  expect(termProposals.find((one) => one.source === source)).toMatchObject({ count: days, unit: 'days' })
})

test.each([
  // January has 31, February 2027 28, March 31 days: 30 left of January, 28, 31, then 1 April is the 90th.
  ['2027-01-01', 90, 'days', '2027-04-01'],
  // February 2028 has 29: the 90th day is 31 March.
  ['2028-01-01', 90, 'days', '2028-03-31'],
  // September has 30 left of 30 after the 1st: 29; October 31 (60), November 30 (90): the 90th day after 1 September is 30 November.
  ['2026-09-01', 90, 'days', '2026-11-30'],
  // 31 left in August after the 31st: 0; September 30, October 61, November 91, December 122, January 153, February 2027 181: the 180th is 27 February.
  ['2026-08-31', 180, 'days', '2027-02-27'],
  // In the leap year 2028 February has a day more, but the 180th stays before it: 152 to 30 January, 28 more: 27 February.
  ['2027-08-31', 180, 'days', '2028-02-27'],
  ['2026-11-28', 6, 'months', '2027-05-28'],
  ['2026-08-31', 6, 'months', '2027-02-28'],
  ['2027-08-31', 6, 'months', '2028-02-29'],
  ['2026-12-31', 2, 'months', '2027-02-28'],
  ['2028-02-29', 1, 'years', '2029-02-28'],
  ['2028-02-29', 4, 'years', '2032-02-29'],
  // 2100 is no leap year, 2000 was one.
  ['2096-02-29', 4, 'years', '2100-02-28'],
  ['1999-12-31', 2, 'months', '2000-02-29'],
] as const)('from %s on, %d %s end on %s', (from, count, unit, end) => {
  expect(dayText(termEnd(dayNumber(from), { count, unit }))).toBe(end)
})

test('the clock of a drum counts down to the day its term ends and goes on below nothing', () => {
  const from = dayNumber('2028-01-01')
  const vessel = { capacity: 200, term: { count: 90, unit: 'days' as const, from: 'first' as const } }
  const left = (day: string) => {
    const { clock } = wasteNow([{ kind: 'stored', on: from, litres: 10 }], { vessel, today: dayNumber(day) })
    return clock.outcome === 'running' ? clock.daysLeft : null
  }
  // 29 February to 31 March: 31 days; to 1 April one more.
  expect([left('2028-01-01'), left('2028-02-29'), left('2028-03-31'), left('2028-04-01')]).toEqual([90, 31, 0, -1])
})

test.each([
  // 1,440 / 1.6 = 900
  [1440, 1.6, 900],
  // 342 / 0.9 = 380
  [342, 0.9, 380],
  // 1,000 / 1 = 1,000
  [1000, 1, 1000],
])('%d kg at %d kg/L are %d L', (kilograms, density, litres) => {
  expect(litresOfMass(kilograms, density)).toBeCloseTo(litres, 9)
  expect(massOfLitres(litres, density)).toBeCloseTo(kilograms, 9)
})

test('two stored, one fetched, by hand: 120 + 95 − 200 leaves 15 L, and 200 L was within what was there', () => {
  const events = [
    { kind: 'stored' as const, on: 0, litres: 120 },
    { kind: 'stored' as const, on: 9, litres: 95 },
    { kind: 'pickup' as const, on: 20, entry: 'x', litres: 200 },
  ]
  const now = wasteNow(events, { vessel: { capacity: 1000, term: null }, today: 30 })
  expect(now).toMatchObject({ litres: 15, full: 1.5, stored: 215, pickedUp: 200, beyond: [] })
})
