import { expect, test } from 'vitest'
import { runCalculation } from './calculation.ts'
import { inverseCalculation } from './inverse.ts'

const run = (input: unknown) => runCalculation(inverseCalculation, input)
const faultsOf = (input: unknown) => {
  try {
    run(input)
  } catch (error) {
    return (error as { faults: unknown }).faults
  }
  return []
}
const calibration = [0, 2, 4, 6, 8, 10].map((x, index) => ({ x, y: [0.1, 1.2, 2.6, 3.7, 5.1, 6.2][index]! }))

test('a reading gives x with its interval, and the line', () => {
  // x̄ 5, ȳ 3.15, spread 70, Σ(x−x̄)y = 43.3: slope 0.618571, intercept 0.057143
  const { output } = run({ calibration, y0: 3 })
  expect(output).toMatchObject({
    x: expect.closeTo((3 - 0.057143) / 0.618571, 4),
    slope: expect.closeTo(43.3 / 70, 10),
    intercept: expect.closeTo(3.15 - (5 * 43.3) / 70, 10),
    within: true,
  })
  expect(output.low).toBeLessThan(output.x)
  expect(output.high).toBeGreaterThan(output.x)
})

test('repeats are a list, and the level is 0.9 unless given', () => {
  const one = run({ calibration, y0: 3 }).output
  expect(run({ calibration, y0: [3] }).output).toEqual(one)
  expect(run({ calibration, y0: 3, level: 0.9 }).output).toEqual(one)
  const wide = run({ calibration, y0: 3, level: 0.99 }).output
  expect(wide.low!).toBeLessThan(one.low!)
})

test('beyond the calibration it says that nothing supports it', () => {
  expect(run({ calibration, y0: 9 }).output.notes.join(' ')).toContain('Outside the calibrated range')
})

test('two points and one reading have no interval', () => {
  const { output, input } = run({ calibration: calibration.slice(0, 2), y0: 1 })
  expect(output).toMatchObject({ low: null, high: null, notes: [expect.stringContaining('no interval')] })
  expect(inverseCalculation.say(output, { units: 'metric' }, input)[0]).toMatch(/^x is 1\.636\d\.$/)
})

test.each([
  ['a flat line', { calibration: calibration.map(({ x }) => ({ x, y: 2 })), y0: 2 }, '/calibration'],
  ['one point', { calibration: calibration.slice(0, 1), y0: 2 }, '/calibration'],
  ['no reading', { calibration, y0: [] }, '/y0'],
  ['a level of 90', { calibration, y0: 2, level: 90 }, '/level'],
  ['a reading as text', { calibration, y0: '2' }, '/y0'],
])('%s is refused at its place', (_, input, pointer) => {
  expect(faultsOf(input)).toMatchObject([{ pointer, found: expect.any(String), expected: expect.any(String) }])
})
