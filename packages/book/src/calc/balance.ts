import { balance, say, sayNumber, sayPercent } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation } from './calculation.ts'
import { given } from './given.ts'

/** Where strength and minerals of a sump go when it is topped up all the time. */
export const balanceCalculation = calculation({
  name: 'balance',
  summary: 'strength and hardness over the days, topped up continuously at constant volume',
  input: z.strictObject({
    volume: z.number().describe('litres'),
    evaporation: z.number().describe('litres a day'),
    carryOff: z.number().describe('litres a day'),
    concentration: z.number().describe('percent at the start'),
    target: z.number().describe('percent'),
    hardness: z.number().describe('mg/L at the start'),
    water: z.strictObject({ hardness: z.number() }),
    strength: z.number().optional().describe('of the top-up; the strength that holds the target without it'),
    depletion: z.number().default(0).describe('share of the concentrate used up a day'),
    days: z.array(z.number()).default([0, 30, 90, 180, 365]),
    limit: z.strictObject({ hardness: z.number() }).optional(),
  }),
  run: ({ water, limit, ...sump }) => {
    const found = balance({ ...given(sump), waterHardness: water.hardness, hardnessLimit: limit?.hardness })
    return { ...found, notes: notesOf(found) }
  },
  say: ({ topUpStrength, cycles, hardnessSteady, series, dayAtLimit, notes }, reader) => [
    topUpStrength === null
      ? say('No top-up holds the target.')
      : say('A top-up at {strength} holds the target.', { strength: sayPercent(topUpStrength, reader) }),
    cycles === null
      ? say('Without carry-off the minerals grow without end.')
      : say('Minerals grow towards {cycles} times those of the top-up, {hardness} mg/L.', {
          cycles: sayNumber(cycles, 1, reader),
          hardness: sayNumber(hardnessSteady!, 0, reader),
        }),
    ...series.map(({ day, concentration, hardness }) =>
      say('day {day}: {concentration}, {hardness} mg/L', {
        day,
        concentration: sayPercent(concentration, reader),
        hardness: sayNumber(hardness, 0, reader),
      }),
    ),
    ...(dayAtLimit === null
      ? []
      : [say('The hardness is at its limit on day {day}.', { day: sayNumber(dayAtLimit, 0, reader) })]),
    ...notes,
  ],
})

function notesOf({ topUpStrength }: { topUpStrength: number | null }): string[] {
  const rough = say('Real minerals are not quite conserved: soaps drop out as scum, some chips add hardness.')
  return topUpStrength === null
    ? [say('No mix up to neat concentrate holds the target at these losses.'), rough]
    : [rough]
}
