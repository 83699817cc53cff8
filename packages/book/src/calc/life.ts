import { economicLife, OutOfRange, replacementPeriod, say, sayNumber } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation, type Remarks } from './calculation.ts'

const straight = z
  .strictObject({
    start: z.number().describe('a day, of a fresh charge'),
    growth: z.number().describe('a day, for each day of age'),
  })
  .describe('cost on day t = start + growth × t')
const listed = z
  .strictObject({
    costs: z.array(z.number()).min(1).max(5000).describe('what it cost to keep in the first, second, … period'),
    periodDays: z.number().default(1),
  })
  .describe('what was written, period by period')

interface Life extends Remarks {
  /** Null where no age of change pays. */
  days: number | null
  costPerDay: number
  curve: { days: number; costPerDay: number }[]
}

/** When a charge is changed by money alone. */
export const lifeCalculation = calculation({
  name: 'life',
  summary: 'after how many days a change costs least over the years, by money alone',
  input: z
    .strictObject({
      changeCost: z.number().describe('of one change: drain, clean, fill, waste, downtime'),
      running: z.union([straight, listed]),
      spoiling: z
        .strictObject({
          scale: z.number().describe('days by which 63.2 % of charges have spoiled'),
          shape: z.number().describe('of the Weibull distribution, from 1'),
          cost: z.number().describe('of a change that a spoiled charge forces'),
        })
        .optional()
        .describe('where a charge may spoil first; with `start` and `growth` only'),
    })
    .superRefine(({ running, spoiling }, context) => {
      if (spoiling === undefined || 'start' in running) return
      context.addIssue({ code: 'custom', path: ['spoiling'], message: '`running` with start and growth beside it' })
    }),
  run: ({ changeCost, running, spoiling }): Life => {
    if ('costs' in running) return byPeriods(changeCost, running)
    const { days, costPerDay, curve, outcome } = economicLife({ changeCost, running, spoiling })
    const never = say(
      'What is written here does not make age dearer than a change: no age of change pays by money alone.',
    )
    return { days, costPerDay, curve, notes: [...(outcome === 'never' ? [never] : [flat()]), ...usual()] }
  },
  say: ({ days, costPerDay, notes }, reader) => [
    days === null
      ? say('No age of change pays; it comes down to {cost} a day.', { cost: sayNumber(costPerDay, 2, reader) })
      : say(
          '{days, plural, one {Cheapest changed after # day: {cost} a day on average.} other {Cheapest changed after # days: {cost} a day on average.}}',
          { days: Math.round(days), cost: sayNumber(costPerDay, 2, reader) },
        ),
    ...notes,
  ],
})

function byPeriods(changeCost: number, { costs, periodDays }: z.infer<typeof listed>): Life {
  if (!(periodDays > 0)) throw new OutOfRange('running.periodDays', periodDays, 'above 0')
  const { period, average, averages, stillFalling } = replacementPeriod({ changeCost, running: costs })
  const falling = say('The average still falls at the end of the list: the best life may be longer.')
  return {
    days: period * periodDays,
    costPerDay: average / periodDays,
    curve: averages.map((cost, n) => ({ days: (n + 1) * periodDays, costPerDay: cost / periodDays })),
    notes: [...(stillFalling ? [falling] : []), flat(), ...usual()],
  }
}

const flat = () =>
  say('The least is flat: a fifth sooner or later costs about 2 % of what change and age cost together.')
const usual = () => [
  say(
    'Condition comes first: a fluid that is split, septic or troubles skin goes now, whatever its age and whatever the money.',
  ),
  say('Money is no reason to keep a fluid beyond what its supplier, guidance or law say.'),
]
