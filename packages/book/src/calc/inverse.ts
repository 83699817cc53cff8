import { inversePrediction, say, sayNumber } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation, NoAnswer } from './calculation.ts'

/** What lies behind a reading on a calibration line. */
export const inverseCalculation = calculation({
  name: 'inverse',
  summary: 'the x behind a reading on a straight calibration line, with its exact interval',
  input: z.strictObject({
    calibration: z.array(z.strictObject({ x: z.number().describe('known'), y: z.number().describe('read') })),
    y0: z.union([z.number(), z.array(z.number())]).describe('the reading, or repeats of it on one sample'),
    level: z.number().default(0.9).describe('of the interval, 0.5 to 0.999'),
  }),
  run: ({ calibration, y0, level }) => {
    const found = inversePrediction({ calibration, y0, level })
    if (found.outcome === 'slope-not-significant') {
      const slope = `a slope of ${sayNumber(found.slope, 4)} ± ${sayNumber(found.slopeSd, 4)}`
      const expected = `a slope that differs from 0 at ${sayNumber(100 * level, 1)} %`
      throw new NoAnswer([{ pointer: '/calibration', found: slope, expected }])
    }
    if (found.outcome === 'no-scatter') {
      const { outcome: _, ...answer } = found
      const unknown = { low: null, high: null, residualSd: null, pooledSd: null, degreesOfFreedom: 0, within: null }
      return {
        ...answer,
        ...unknown,
        notes: ['Two points and one reading do not show how far readings scatter: no interval.'],
      }
    }
    const { outcome: _, ...answer } = found
    return { ...answer, notes: notesOf(found.within) }
  },
  say: ({ x, low, high, slope, intercept, residualSd, notes }, reader, { level }) => {
    const figure = (value: number) => sayNumber(value, 4, reader, 0)
    const line = `y = ${figure(intercept)} + ${figure(slope)} x`
    return [
      low === null || high === null
        ? say('x is {x}.', { x: figure(x) })
        : say('x is {x} ({low} to {high}, {level} %).', {
            x: figure(x),
            low: figure(low),
            high: figure(high),
            level: sayNumber(100 * level, 1, reader, 0),
          }),
      residualSd === null
        ? `${line}.`
        : say('{line}, readings {deviation} about it.', { line, deviation: figure(residualSd) }),
      ...notes,
    ]
  },
})

function notesOf(within: boolean): string[] {
  const limits = say(
    'The interval holds every x the reading does not contradict; repeats are pooled with the line (n + m − 3 degrees of freedom).',
  )
  return within ? [limits] : [limits, say('Outside the calibrated range: nothing supports the line there.')]
}
