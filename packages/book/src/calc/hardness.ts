import { hardnessInAll, hardnessUnits, say, sayNumber } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation } from './calculation.ts'

const shown = {
  ppm: 'ppm (mg/L as CaCO3)',
  dH: '°dH',
  gpg: 'grains per US gallon',
  clark: '°Clark',
  fH: '°fH',
  'mmol/L': 'mmol/L',
}

/** Water hardness in every unit. */
export const hardnessCalculation = calculation({
  name: 'hardness',
  summary: 'a water’s hardness in every unit',
  input: z.strictObject({
    value: z.number(),
    unit: z.enum(hardnessUnits as [keyof typeof shown, ...(keyof typeof shown)[]]),
  }),
  run: ({ value, unit }) => ({
    ...hardnessInAll(value, unit),
    notes: [say('1 °dH is 10 mg of CaO a litre, 1 gpg one grain of CaCO3 a US gallon; all as calcium carbonate.')],
  }),
  say: ({ notes, ...all }, reader) => [
    ...Object.entries(shown).map(
      ([unit, words]) => `${sayNumber(all[unit as keyof typeof shown], 2, reader)} ${words}`,
    ),
    ...notes,
  ],
})
