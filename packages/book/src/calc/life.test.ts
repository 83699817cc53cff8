import { expect, test } from 'vitest'
import { calculations, runCalculation } from './index.ts'

const life = calculations.get('life')!
const run = (input: unknown) => runCalculation(life, input).output as Record<string, unknown> & { notes: string[] }

test('days and cost a day come from the change and the growth alone', () => {
  // √(2 × 400 / 0.02) = 200, 2 + √(2 × 400 × 0.02) = 6.
  const found = run({ changeCost: 400, running: { start: 2, growth: 0.02 } })
  expect(found).toMatchObject({ days: 200, costPerDay: 6 })
  expect(found.notes.join(' ')).toContain('split, septic')
})

test('where nothing grows dearer, no age pays, and that condition decides is said', () => {
  const found = run({ changeCost: 400, running: { start: 2, growth: 0 } })
  expect(found).toMatchObject({ days: null, costPerDay: 2 })
  expect(found.notes[0]).toContain('no age of change pays')
  expect(found.notes.join(' ')).toContain('goes now')
})

test('costs as they were written, period by period', () => {
  // (12 000 + 10 000) / 6 periods, over 30 days each; the table is a textbook's (see checks/cost.check.ts).
  const costs = [200, 500, 800, 1200, 1800, 2500, 3200, 4000]
  const found = run({ changeCost: 12_000, running: { costs, periodDays: 30 } })
  expect(found.days).toBe(180)
  expect(found.costPerDay).toBeCloseTo(19_000 / 6 / 30, 10)
  expect(run({ changeCost: 12_000, running: { costs: [1, 1] } }).notes[0]).toContain('still falls')
})

test('in words', () => {
  const { input, output } = runCalculation(life, { changeCost: 400, running: { start: 2, growth: 0.02 } })
  expect(life.say(output, { units: 'metric' }, input)[0]).toBe(
    'Cheapest changed after 200 days: 6.00 a day on average.',
  )
})

test.each([
  ['/changeCost', { changeCost: 0, running: { start: 1, growth: 1 } }],
  ['/running/growth', { changeCost: 1, running: { start: 1, growth: -1 } }],
  ['/running/periodDays', { changeCost: 1, running: { costs: [1], periodDays: 0 } }],
  ['/spoiling', { changeCost: 1, running: { costs: [1] }, spoiling: { scale: 1, shape: 2, cost: 2 } }],
  ['/spoiling/shape', { changeCost: 1, running: { start: 1, growth: 1 }, spoiling: { scale: 1, shape: 0.5, cost: 2 } }],
  ['/colour', { changeCost: 1, running: { start: 1, growth: 1 }, colour: 1 }],
])('what does not fit is refused at %s', (pointer, input) => {
  expect(() => run(input)).toThrow(expect.objectContaining({ faults: [expect.objectContaining({ pointer })] }))
})
