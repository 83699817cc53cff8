import { premix, say, sayCautions, sayNumber, sayStrength, sayVolume } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation } from './calculation.ts'

/** What to mix for one cart. */
export const premixCalculation = calculation({
  name: 'premix',
  summary: 'the few strengths for one cart that bring many sumps nearest to their targets',
  input: z.strictObject({
    needs: z.array(
      z.strictObject({
        sump: z.string().min(1),
        volume: z.number().describe('litres to be poured'),
        strength: z.number().describe('percent that would be poured if each sump had its own'),
        sumpVolume: z.number().describe('litres in the sump after the fill'),
      }),
    ),
    strengths: z.number().describe('how many strengths the cart carries'),
  }),
  run: ({ needs, strengths }) => ({
    ...premix(needs, strengths),
    notes: [say('The least sum of squared errors in the sumps: no other grouping does better.')],
    cautions: sayCautions(['concentrateLast']),
  }),
  say: ({ batches, worst, notes, cautions }, reader) => [
    ...batches.map(({ strength, volume, sumps }) => {
      const concentrate = sayVolume((volume * strength) / 100, reader)
      return say('{volume} at {strength} ({concentrate} concentrate): {sumps}', {
        volume: sayVolume(volume, reader),
        strength: sayStrength(strength, reader),
        concentrate,
        sumps: sumps.join(', '),
      })
    }),
    say('The sump farthest from its target misses it by {percent} %.', { percent: sayNumber(worst, 2, reader) }),
    ...notes,
    ...cautions,
  ],
})
