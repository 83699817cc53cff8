import { percentFromOneIn, percentFromWaterParts, say, sayNumber, waterPartsFromPercent } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation } from './calculation.ts'

/** Percent and ratio. */
export const ratioCalculation = calculation({
  name: 'ratio',
  summary: 'percent from "1 part concentrate to N parts water", and back',
  input: z
    .strictObject({
      percent: z.number().optional(),
      waterParts: z.number().optional().describe('N in 1 part concentrate to N parts water'),
    })
    .refine(({ percent, waterParts }) => (percent === undefined) !== (waterParts === undefined), {
      error: 'one of percent and waterParts',
      path: ['percent'],
    }),
  run: ({ percent, waterParts }) => {
    const parts = waterParts ?? waterPartsFromPercent(percent!)
    const strength = percent ?? percentFromWaterParts(parts)
    const oneIn = percentFromOneIn(1 + parts)
    const notes = [
      say(
        '1 : N is 1 part concentrate to N parts water, {percent} % here; "1 in N" counts the finished mix: the same {same} % is 1 in {parts}.',
        { percent: sayNumber(strength, 2), same: sayNumber(oneIn, 2), parts: sayNumber(1 + parts, 2) },
      ),
    ]
    return { percent: strength, waterParts: parts, notes }
  },
  say: ({ percent, waterParts, notes }, reader) => [
    say('{percent} % is 1 part concentrate to {parts} parts water.', {
      percent: sayNumber(percent, 2, reader),
      parts: sayNumber(waterParts, 2, reader),
    }),
    ...notes,
  ],
})
