import { say, sayNumber, sayVolume, treatment } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation } from './calculation.ts'

const share = z.number().describe('a share up to 1 or a percentage above 1: 0.75 and 75 are the same')

/** Size, cost and payback of a purifier. */
export const treatmentCalculation = calculation({
  name: 'treatment',
  summary: 'what a purifier must make, what a litre costs, how long resin lasts, when it has paid',
  input: z
    .strictObject({
      demand: z.number().optional().describe('litres of treated water a day'),
      sumps: z
        .array(z.strictObject({ evaporation: z.number(), carryOff: z.number() }))
        .min(1)
        .optional()
        .describe('litres a day each; their sum is the demand'),
      peak: z.number().default(1.5).describe('the worst day over the mean day'),
      tap: z.strictObject({
        tds: z.number().optional().describe('dissolved solids, mg/L'),
        hardness: z.number().describe('mg/L as CaCO3'),
        costPerLitre: z.number(),
      }),
      unit: z
        .strictObject({
          litresPerDay: z.number(),
          price: z.number(),
          recovery: share,
          rejection: share,
          upkeepPerYear: z.number().default(0),
        })
        .optional(),
      polisher: z
        .strictObject({
          resinLitres: z.number(),
          capacityPerLitre: z.number().describe('grams of CaCO3'),
          price: z.number().describe('of each exchange of the resin'),
        })
        .optional(),
      fluidSaving: z.number().default(0).describe('money a year'),
      years: z.number().default(5).describe('over which the unit is written off'),
    })
    .superRefine(({ demand, sumps, unit, polisher }, context) => {
      const fault = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message })
      if ((demand === undefined) === (sumps === undefined)) fault(['demand'], 'either a demand or sumps')
      if (unit === undefined && polisher === undefined) fault(['unit'], 'a unit or a polisher')
      for (const [index, { evaporation, carryOff }] of (sumps ?? []).entries()) {
        if (evaporation < 0) fault(['sumps', index, 'evaporation'], 'at least 0')
        if (carryOff < 0) fault(['sumps', index, 'carryOff'], 'at least 0')
      }
    }),
  run: ({ demand, sumps = [], tap, unit, polisher, ...rest }) => {
    const litres = demand ?? sumps.reduce((sum, { evaporation, carryOff }) => sum + evaporation + carryOff, 0)
    const found = treatment({
      ...rest,
      demand: litres,
      tap: { ...tap, tds: tap.tds ?? null },
      unit:
        unit === undefined ? null : { ...unit, recovery: shareOf(unit.recovery), rejection: shareOf(unit.rejection) },
      polisher: polisher ?? null,
    })
    return { demand: litres, ...found, notes: notesOf(found, tap.tds === undefined) }
  },
  say: ({ demand, capacityNeeded, costPerLitre, resinLife, paybackYears, concentrate, notes }, reader) => [
    say('{mean} a day on the mean, {worst} on the worst day.', {
      mean: sayVolume(demand, reader),
      worst: sayVolume(capacityNeeded, reader),
    }),
    say('A litre costs {cost}.', { cost: sayNumber(costPerLitre, 4, reader) }),
    concentrate === null
      ? ''
      : say('{volume} a day go to the drain.', { volume: sayVolume(concentrate.litresPerDay, reader) }),
    resinLife === null ? '' : say('A filling of resin lasts for {volume}.', { volume: sayVolume(resinLife, reader) }),
    paybackYears === null
      ? say('It does not pay back.')
      : say('It has paid after {years} years.', { years: sayNumber(paybackYears, 1, reader) }),
    ...notes,
  ],
})

const shareOf = (given: number) => (given > 1 ? given / 100 : given)

function notesOf({ enough }: { enough: boolean | null }, solidsUnknown: boolean): string[] {
  const notes = [
    say(
      'A storage tank lets a smaller unit carry the peaks. The saving in fluid is an assumption: it decides the payback.',
    ),
    say('Resin takes up all dissolved solids, reckoned as CaCO3; exchanger water can hold more germs than tap water.'),
  ]
  if (solidsUnknown)
    notes.push(
      say('Dissolved solids are unknown: the resin is reckoned by the hardness alone and will not last as long.'),
    )
  if (enough === false)
    notes.push(say('The unit makes less than the worst day needs: storage must carry the difference.'))
  return notes
}
