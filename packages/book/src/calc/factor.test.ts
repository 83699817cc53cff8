import { expect, test } from 'vitest'
import { runCalculation } from './calculation.ts'
import { factorCalculation } from './factor.ts'

const run = (input: unknown) => runCalculation(factorCalculation, input)
const faultsOf = (input: unknown) => {
  try {
    run(input)
  } catch (error) {
    return (error as { faults: unknown }).faults
  }
  return []
}
const mixes = [
  { percent: 4, brix: 2.5 },
  { percent: 8, brix: 5.1 },
  { percent: 12, brix: 7 },
]

test('mixes give percent per °Brix with its interval, through zero unless told otherwise', () => {
  // slope 134.8 / 224; interval as worked out in the computation's own test
  const { output } = run({ mixes })
  expect(output).toMatchObject({
    factor: expect.closeTo(224 / 134.8, 10),
    low90: expect.closeTo(1.5308, 3),
    high90: expect.closeTo(1.8172, 3),
    intercept: 0,
    n: 3,
    straight: true,
    brixChart: null,
  })
  expect(run({ mixes, throughZero: false }).output.intercept).not.toBe(0)
})

test('a product that bends is named and given a chart', () => {
  const bent = [2, 4, 6, 8, 10, 12].map((percent) => ({ percent, brix: 0.7 * percent - 0.01 * percent ** 2 }))
  const { output } = run({ mixes: bent })
  expect(output.straight).toBe(false)
  expect(output.brixChart).toHaveLength(7)
  expect(output.notes.join(' ')).toContain('Not a straight line')
})

test('a zero that is off is noted', () => {
  const off = [4, 6, 8, 10, 12].map((percent, index) => ({ percent, brix: 0.5 + 0.625 * percent + 0.01 * (index % 2) }))
  const { notes, straight } = run({ mixes: off }).output
  expect(straight).toBe(true)
  expect(notes.join(' ')).toContain('0.50 °Brix on plain water: set the instrument to zero')
  // Asked for an intercept, it has been taken in already.
  expect(run({ mixes: off, throughZero: false }).output.notes.join(' ')).not.toContain('set the instrument')
})

test('the answer in words names the factor and the interval', () => {
  const { input, output } = run({ mixes })
  const [first] = factorCalculation.say(output, { units: 'metric' }, input)
  expect(first).toBe('1.662 % per °Brix (1.531–1.817).')
})

test('a single mix is no calibration, and says so', () => {
  const { output } = run({ mixes: [{ percent: 8, brix: 5 }] })
  expect(output).toMatchObject({ factor: 1.6, low90: null, high90: null, straight: null })
  expect(output.notes.join(' ')).toContain('make up some more')
})

test.each([
  ['no mixes', { mixes: [] }, '/mixes'],
  [
    'readings that do not rise',
    { mixes: [4, 8, 12].map((percent) => ({ percent, brix: 5 })), throughZero: false },
    '/mixes',
  ],
  ['a strength above 100', { mixes: [{ percent: 101, brix: 5 }] }, '/mixes/0/percent'],
  ['a reading off the scale', { mixes: [...mixes, { percent: 8, brix: 96 }] }, '/mixes/3/brix'],
  ['an unknown field', { mixes, throughNought: true }, '/throughNought'],
  ['a reading as text', { mixes: [{ percent: 8, brix: '5' }] }, '/mixes/0/brix'],
])('%s is refused at its place', (_, input, pointer) => {
  expect(faultsOf(input)).toMatchObject([{ pointer, found: expect.any(String), expected: expect.any(String) }])
})
