import { expect, test } from 'vitest'
import { type SaidGap, sayCost, sayGap, sayLean, sayLife, sayMonth, sayRich, saySaving } from './cost.ts'

const reader = { units: 'metric', currency: 'EUR' } as const

test('a cost is said with its parts, dearest first, and what is said adds up', () => {
  const parts = [
    { part: 'water', cents: 6142 },
    { part: 'concentrate', cents: 31045 },
    { part: 'rounds', cents: 4050 },
    { part: 'waste', cents: 0 },
  ] as const
  // 412.37: 310 + 61 + 40 are one short, which the rounds get with the largest remainder.
  expect(sayCost('October 2026', parts, reader)).toBe(
    'October 2026 cost €412: €310 concentrate, €61 water and €41 work on rounds.',
  )
  expect(sayCost('May 2026', [{ part: 'water', cents: 505 }], reader)).toBe('May 2026 cost €5.05: €5.05 water.')
  expect(sayCost('May 2026', [], reader)).toBe('May 2026: nothing was counted.')
})

test('a month has its name', () => {
  expect(sayMonth('2026-10')).toBe('October 2026')
  expect(sayMonth('2026-01', { locale: 'de' })).toBe('Januar 2026')
})

test.each<[SaidGap['what'], number, string[], string]>([
  ['labour', 3, ['Mill 1'], 'No hourly rate of work is set: work is not counted.'],
  ['waste-price', 2, ['Used emulsion'], 'No price is set for Used emulsion: 2 pickups not counted.'],
  ['minutes-per-stop', 1, ['Mill 1'], 'How long a stop takes is not set: 1 stop of rounds not counted.'],
  ['fill-unmeasured', 1, ['Saw'], '1 pour without an amount, and without a level read before, is not counted: Saw.'],
  [
    'strength-unknown',
    6,
    ['A', 'B', 'C', 'D', 'E', 'F'],
    '6 pours without a strength are not counted: A, B, C and D and 2 more.',
  ],
])('what is missing is said: %s', (what, count, names, words) => {
  expect(sayGap({ what, count, names })).toBe(words)
})

test('running rich is said with its interval, and not at all where it was nothing', () => {
  const litres = { mean: 6, low: 3, high: 9 }
  expect(sayRich(litres, { mean: 3800, low: 1900, high: 5700 }, reader)).toBe(
    '€38 (€19–€57) of it went for running above target: about 6 L (3 L to 9 L) of concentrate left with chips and parts that the target did not ask for.',
  )
  expect(sayRich(litres, null, reader)).toMatch(/^about 6 L/)
  expect(sayRich({ mean: 0.09, low: 0, high: 0.2 }, null, reader)).toBe('')
})

test('a saving is promised only where it lies beyond what is not known', () => {
  const need = { mean: 20, low: 16, high: 24 }
  const cents = { mean: 4900, low: 2900, high: 6900 }
  expect(saySaving({ poured: 30, need, saved: { mean: 10, low: 6, high: 14 }, cents }, reader)).toBe(
    '30 L of concentrate was poured; holding the target would have taken about 20 L (16 L to 24 L). Topped up at the strength that holds it, about 10 L less, €49 (€29–€69).',
  )
  expect(saySaving({ poured: 22, need, saved: { mean: 2, low: -2, high: 6 }, cents }, reader)).toContain(
    'nothing can be promised',
  )
  expect(saySaving({ poured: 10, need, saved: { mean: -10, low: -14, high: -6 }, cents }, reader)).toContain('run lean')
})

test('running lean has no price of our own', () => {
  expect(sayLean(3, null, reader)).toContain('What that costs is not set.')
  expect(sayLean(3, 9000, reader)).toContain('By the shop’s own figure €90.00.')
  expect(sayLean(0, 0, reader)).toBe('')
})

test('condition is said before money, and an age never makes an interval longer', () => {
  expect(sayLife({ outcome: 'condition', because: 'Rancid smell on 3 November.' }, reader)).toBe(
    'Rancid smell on 3 November. Condition comes first: it goes now, whatever its age and whatever the money.',
  )
  const age = { outcome: 'age', age: 120, days: 200, low: 160, high: 300, changeCost: 40_000, assumed: true } as const
  expect(sayLife(age, reader)).toBe(
    '120 days old; with a change at €400, reckoned from a full charge, by money alone it pays after about 200 days (160 to 300 days). Condition comes first, and no interval of guidance or law becomes longer by it.',
  )
  expect(sayLife({ ...age, age: 201 }, reader)).toContain('by money alone a change is due')
  for (const outcome of ['flat', 'too-few', 'no-change-cost'] as const) {
    expect(sayLife({ outcome }, reader)).not.toBe('')
  }
})
