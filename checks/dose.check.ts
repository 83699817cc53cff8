/**
 * Doses against textbook arithmetic of water treatment and pharmacy, and the definitions of the units.
 *
 * Sources, from memory unless said otherwise, each worked by hand beside its case: the pounds formula of water operators (pounds = mg/L × million US gallons ×
 * 8.34), percent and parts-per-million problems of pharmacy calculation (1 % w/v = 10 g/L; 1 ppm = 1 mg/L), tank-mix tables (a fluid ounce a gallon).
 * Exact: US gallon 3.785411784 L, imperial gallon 4.54609 L, pound 453.59237 g, 128 US and 160 imperial fluid ounces a gallon.
 * Tolerance: 1e-9 where the units are exact; 0.1 % where the book's 8.34 is itself rounded (8.3454 lb is the water of a US gallon at 1 g/mL).
 */
import { alligation, dose, perLitre } from '@sumpbook/fluid'
import { expect, test } from 'vitest'

const usGal = 3.785411784
const imperialGal = 4.54609
const pound = 453.59237

/** What a label's amount comes to in a volume that is known. */
function doseOf(amount: number, unit: Parameters<typeof perLitre>[1], litres: number, given = 0): number {
  const { amount: each } = perLitre(amount, unit)
  const answer = dose({
    label: { low: 0, high: each, minimumDays: null, most: { amount: each, days: 28 } },
    volume: { mean: litres, low90: litres, high90: litres },
    given: given === 0 ? [] : [{ daysAgo: 1, amount: given }],
    isFallUnexplained: false,
    isNitriteWithAmines: false,
    inDoubt: false,
  })
  if (answer.outcome !== 'dose') throw new Error(answer.outcome)
  return answer.most
}
const within = (share: number) => (found: number, expected: number) =>
  expect(Math.abs(found / expected - 1)).toBeLessThan(share)

// Pounds = mg/L × MG × 8.34.
test.each([
  ['2 mg/L in a million gallons: 2 × 1 × 8.34', 2, 1e6, 16.68],
  ['5 mg/L in half a million gallons: 5 × 0.5 × 8.34', 5, 0.5e6, 20.85],
  ['0.6 mg/L in 3.5 million gallons: 0.6 × 3.5 × 8.34', 0.6, 3.5e6, 17.514],
  ['50 mg/L in 10,000 gallons: 50 × 0.01 × 8.34', 50, 1e4, 4.17],
])('the pounds formula, %s', (_, mgPerLitre, gallons, pounds) => {
  within(0.001)(doseOf(mgPerLitre, 'mg/L', gallons * usGal) / pound, pounds)
})

test.each([
  [
    'one fluid ounce a gallon in 50 US gallons is 50 fluid ounces',
    1,
    'fl oz/gal',
    50 * usGal,
    (50 / 128) * usGal * 1000,
  ],
  [
    '2000 parts in a million by volume of 500 US gallons is one gallon: 500 × 0.002',
    0.2,
    '%',
    500 * usGal,
    usGal * 1000,
  ],
  [
    '1500 parts in a million of 300 US gallons are 57.6 fluid ounces: 300 × 0.0015 × 128',
    0.15,
    '%',
    300 * usGal,
    (57.6 / 128) * usGal * 1000,
  ],
  [
    '0.1 % of 100 imperial gallons are 16 imperial fluid ounces: 100 × 0.001 × 160',
    0.1,
    '%',
    100 * imperialGal,
    (16 / 160) * imperialGal * 1000,
  ],
  ['one litre in a thousand, 240 L: 240 mL', 1, 'L/1000 L', 240, 240],
  ['1.5 mL a litre in 240 L: 360 mL', 1.5, 'mL/L', 240, 360],
] as const)('by volume, %s', (_, amount, unit, litres, expected) => {
  within(1e-9)(doseOf(amount, unit, litres), expected)
})

test.each([
  ['1 in 1000 weight in volume is 1 g a litre: 250 g in 250 L', 1, 'g/L', 250, 250],
  ['0.9 % weight in volume is 9 g a litre: 9 g in 1 L', 9, 'g/L', 1, 9],
  ['25 mg/L in 80 L is 2 g', 25, 'mg/L', 80, 2],
] as const)('by weight, %s', (_, amount, unit, litres, expected) => {
  within(1e-9)(doseOf(amount, unit, litres), expected)
})

test('what went in already is taken off: 2 mL/L in 200 L are 400 mL, less 150 mL', () => {
  expect(doseOf(2, 'mL/L', 200, 150)).toBeCloseTo(250, 9)
})

// Pharmacy arithmetic (read): 70 % and 20 % to 30 % are 1 part to 4. So 1 L at 70 % is the dose that brings 4 L of 20 % to 30 %.
test('alligation gives the same total as amount by volume', () => {
  const { first, second } = alligation({ first: 70, second: 20, wanted: 30 }) as { first: number; second: number }
  expect(first / second).toBeCloseTo(1 / 4, 12)
  const product = doseOf(20, '%', 5)
  expect(product).toBeCloseTo(1000, 9)
})

test('a fluid ounce a US gallon is 7.8125 mL a litre, exactly 1/128', () => {
  expect(perLitre(1, 'fl oz/gal').amount).toBe(7.8125)
})
