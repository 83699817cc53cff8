import { rinse, say, sayNumber } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation } from './calculation.ts'

/** What is left of the old fluid after rinsing. */
export const rinseCalculation = calculation({
  name: 'rinse',
  summary: 'what is left of the old fluid after a number of rinses',
  input: z.strictObject({
    heldBack: z.number().describe('litres that stay in lines and corners each time'),
    rinseVolume: z.number().describe('litres added to them, each time'),
    rinses: z.int(),
    concentration: z.number().describe('of what is rinsed out, in its own unit'),
  }),
  run: (input) => {
    const { residualFraction, residual } = rinse(input)
    return {
      residualFraction,
      residual,
      notes: [say('Each rinse is taken as fully mixed: circulate it through every line and hose.')],
    }
  },
  say: ({ residualFraction, residual, notes }, reader) => [
    say('{percent} % of the old fluid is left: {residual}.', {
      percent: sayNumber(100 * residualFraction, 4, reader),
      residual: sayNumber(residual, 4, reader),
    }),
    ...notes,
  ],
})
