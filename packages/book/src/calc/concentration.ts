import { concentrationFromBrix, say, sayConcentration } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation, NoAnswer } from './calculation.ts'
import { given } from './given.ts'

/** Strength by refractometer. */
export const concentrationCalculation = calculation({
  name: 'concentration',
  summary: 'percent from a refractometer reading, by factor or product chart, with its interval',
  input: z
    .strictObject({
      brix: z.number().describe('°Brix as shown'),
      factor: z.number().optional().describe('percent per °Brix'),
      chart: z
        .array(z.tuple([z.number(), z.number()]))
        .optional()
        .describe('[°Brix, percent] pairs; wins over the factor'),
      waterBrix: z.number().default(0).describe('what the instrument shows on the shop’s water'),
      resolution: z.number().default(0.2),
      factorSd: z.number().default(0),
      diluted: z.number().default(1).describe('2 where sample and water were mixed 1:1'),
    })
    .refine(({ factor, chart }) => factor !== undefined || chart !== undefined, {
      error: 'a factor (percent per °Brix) or a chart',
      path: ['factor'],
    }),
  run: ({ factor, chart, ...reading }) => {
    const scale = chart === undefined ? { factor: factor! } : { chart }
    const read = concentrationFromBrix({ ...given(reading), ...scale })
    if (read.outcome === 'off-chart') {
      const expected = `a reading on the chart, ${read.low} to ${read.high} °Brix`
      throw new NoAnswer([{ pointer: '/brix', found: String(read.found), expected }])
    }
    const { outcome: _, ...concentration } = read
    const notes = [say('Tramp oil and dirt lift a refractometer reading; no single reading shows by how much.')]
    return { ...concentration, notes }
  },
  say: ({ concentration, low90, high90, notes }, reader) => [
    `${sayConcentration({ mean: concentration, low90, high90 }, reader)}.`,
    ...notes,
  ],
})
