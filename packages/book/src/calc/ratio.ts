import { percentFromOneIn, percentFromWaterParts, sayNumber, waterPartsFromPercent } from '@sumpbook/fluid'
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
      `1 : N is 1 part concentrate to N parts water, ${sayNumber(strength, 2)} % here; "1 in N" counts the finished mix: the same ${sayNumber(oneIn, 2)} % is 1 in ${sayNumber(1 + parts, 2)}.`,
    ]
    return { percent: strength, waterParts: parts, notes }
  },
  say: ({ percent, waterParts, notes }, reader) => [
    `${sayNumber(percent, 2, reader)} % is 1 part concentrate to ${sayNumber(waterParts, 2, reader)} parts water.`,
    ...notes,
  ],
})
