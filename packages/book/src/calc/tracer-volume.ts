import { say, sayNumber, sayVolume, tracerVolume } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation, NoAnswer } from './calculation.ts'

/** How much a sump holds, from how far a known pour moves its strength. */
export const tracerVolumeCalculation = calculation({
  name: 'tracer-volume',
  summary: 'a sump’s volume from how far a measured addition moves its strength',
  input: z.strictObject({
    before: z.number().describe('percent before the addition'),
    after: z.number().describe('percent after it, well circulated'),
    added: z.number().describe('litres'),
    strength: z.number().default(100).describe('percent of what was added'),
    sd: z.number().default(0).describe('standard deviation of each reading, percent'),
  }),
  run: (step) => {
    const traced = tracerVolume(step)
    if (traced.outcome === 'wrong-way') {
      const expected = `a strength between ${step.before} % and that of what was added, ${step.strength} %`
      throw new NoAnswer([{ pointer: '/after', found: `${step.after} %`, expected }])
    }
    if (traced.outcome === 'too-small') {
      const found = `a step of ${sayNumber(Math.abs(traced.step), 2)} %`
      throw new NoAnswer([
        { pointer: '/after', found, expected: `a step of more than ${sayNumber(traced.smallestStep, 2)} %` },
      ])
    }
    const { outcome: _, ...volume } = traced
    const notes = [
      say(
        'This is the fluid before the addition, what is out in the lines included; circulate 15 to 30 minutes before reading again.',
      ),
    ]
    return { ...volume, notes }
  },
  say: ({ volume, low90, high90, notes }, reader) => [
    say('{volume} ({low} to {high}).', {
      volume: sayVolume(volume, reader),
      low: sayVolume(low90, reader),
      high: sayVolume(high90, reader),
    }),
    ...notes,
  ],
})
