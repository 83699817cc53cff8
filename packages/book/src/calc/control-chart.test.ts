import { expect, test } from 'vitest'
import { z } from 'zod'
import { runCalculation } from './calculation.ts'
import { controlChartCalculation } from './control-chart.ts'

const run = (input: unknown) => runCalculation(controlChartCalculation, input)
const faultsOf = (input: unknown) => {
  try {
    run(input)
  } catch (error) {
    return (error as { faults: unknown }).faults
  }
  return []
}

test('single values have limits that are numbers, and signals with the test that gave them', () => {
  // mean 10.75, mean range 4/3: ± 3 × 4/3 / 1.128
  const { output } = run({ values: [10, 12, 11, 10], kind: 'individuals' })
  expect(output).toMatchObject({ centre: 10.75, upper: expect.closeTo(14.2961, 4), signals: [] })
  const beyond = run({ values: [0, 0, 4], kind: 'individuals', target: 0, sd: 1 }).output
  expect(beyond.signals).toEqual([{ index: 2, rule: 1 }])
})

test('all of Nelson’s tests run unless some are asked for', () => {
  const series = { values: [1, 2, 3, 4, 5, 6].map((v) => v / 10), kind: 'individuals', target: 0.35, sd: 1 }
  expect(run(series).output.signals).toEqual([{ index: 5, rule: 3 }])
  expect(run({ ...series, rules: [1, 2] }).output.signals).toEqual([])
})

test('the kind is an EWMA unless another is asked for, with a limit for each point', () => {
  const { output } = run({ values: [12, 12, 8], target: 10, sd: 1, lambda: 0.5 })
  expect(output).toMatchObject({ kind: 'ewma', points: [11, 11.5, 9.75] })
  expect(output.upper).toHaveLength(3)
})

test('a CUSUM takes k and h in sd where one is given, else as they are', () => {
  const series = { values: [14, 10], kind: 'cusum', target: 10, k: 1, h: 4 }
  expect(run(series).output).toMatchObject({ upper: 4, points: [{ above: 3 }, { above: 2 }] })
  expect(run({ ...series, sd: 2 }).output).toMatchObject({ upper: 8, points: [{ above: 2 }, { above: 0 }] })
  expect(run(series).output.notes.join(' ')).toContain('in the unit of the values')
})

test('the answer in words counts values from 1', () => {
  const { output, input } = run({ values: [0, 0, 4], kind: 'individuals', target: 0, sd: 1 })
  expect(controlChartCalculation.say(output, { units: 'metric' }, input).slice(0, 2)).toEqual([
    'Centre 0.000, limits -3.000 and 3.000.',
    'Value 3: test 1.',
  ])
  const slide = run({ values: [2, 2], target: 0, sd: 1, lambda: 0.5 })
  expect(controlChartCalculation.say(slide.output, { units: 'metric' }, slide.input)).toContain('No signal.')
  const jump = run({ values: [4, 4], target: 0, sd: 1, lambda: 0.5 })
  expect(controlChartCalculation.say(jump.output, { units: 'metric' }, jump.input)[1]).toBe(
    'Value 1: the average is beyond its upper limit.',
  )
  const sum = run({ values: [-6], kind: 'cusum', target: 0, sd: 1 })
  expect(controlChartCalculation.say(sum.output, { units: 'metric' }, sum.input)[1]).toBe(
    'Value 1: the sum passes its lower limit.',
  )
  const calm = run({ values: [0, 0.1], target: 0, sd: 1 })
  expect(controlChartCalculation.say(calm.output, { units: 'metric' }, calm.input)).toContain('No signal.')
})

test('its input can be published as a schema', () => {
  expect(z.toJSONSchema(controlChartCalculation.input, { io: 'input' })).toMatchObject({ type: 'object' })
})

test.each([
  ['one value without an sd', { values: [1] }, '/values'],
  ['a value that is text', { values: [1, '2'] }, '/values/1'],
  ['an unknown kind', { values: [1, 2], kind: 'pareto' }, '/kind'],
  ['a share above 1', { values: [1, 2], lambda: 2 }, '/lambda'],
  ['k alone without an sd', { values: [1, 2], kind: 'cusum', k: 1 }, '/h'],
  ['h alone without an sd', { values: [1, 2], kind: 'cusum', h: 1 }, '/k'],
  ['an sd of 0', { values: [1, 2], sd: 0 }, '/sd'],
  ['a ninth test', { values: [1, 2], kind: 'individuals', rules: [9] }, '/rules/0'],
])('%s is refused at its place', (_, input, pointer) => {
  expect(faultsOf(input)).toMatchObject([{ pointer, found: expect.any(String), expected: expect.any(String) }])
})
