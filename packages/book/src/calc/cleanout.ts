import {
  cleanoutCost,
  cleanoutSheet,
  firstWater,
  say,
  sayCleanout,
  sayCleanoutStep,
  sayNumber,
  sayPercent,
} from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation, NoAnswer } from './calculation.ts'
import { given } from './given.ts'

const kinds = ['tap', 'well', 'softened', 'reverse-osmosis', 'deionised'] as const

/** The steps, quantities, hours and cost of cleaning out a sump. */
export const cleanoutCalculation = calculation({
  name: 'cleanout',
  summary: 'the job sheet of a cleanout: what to drain, clean, rinse and fill with, its waste, hours and cost',
  input: z.strictObject({
    volume: z.number().describe('litres at the full mark, lines included'),
    heldBack: z.number().describe('litres that stay in lines and corners at each drain'),
    cleanerPercent: z.number().default(2).describe('of cleaner in what is poured'),
    hours: z.number().default(4).describe('for which the cleaner runs'),
    rinsePercent: z.number().default(2).describe('of concentrate in what is poured for a rinse'),
    rinseFraction: z.number().default(0.4).describe('part of a full charge that each rinse takes, 0 to 1'),
    rinses: z.int().default(1),
    target: z.number().describe('percent in the fresh charge, heel included'),
    strongest: z.number().optional().describe('percent; the strongest mix that can be poured'),
    water: z
      .union([
        z.string(),
        z.strictObject({
          id: z.string().optional(),
          name: z.string().optional(),
          kind: z.enum(kinds).optional(),
          hardness: z.number().min(0).optional().describe('mg/L as CaCO3'),
        }),
      ])
      .optional()
      .describe('what the fresh charge is made with'),
    hardness: z
      .strictObject({ low: z.number().min(0).optional(), high: z.number().min(0).optional() })
      .optional()
      .describe('limits of the mix, mg/L as CaCO3'),
    metals: z.array(z.string()).optional(),
    solids: z.enum(['little', 'much']).optional(),
    enterable: z.boolean().default(false).describe('a pit, a tank, a central system'),
    foul: z.boolean().optional().describe('whether much has grown in it'),
    fillPerHour: z.number().optional().describe('litres an hour that the filling hose gives'),
    prices: z
      .strictObject({
        concentrate: z.number().optional().describe('a litre'),
        cleaner: z.number().optional().describe('a litre'),
        water: z.number().optional().describe('a litre'),
        waste: z.number().optional().describe('a litre'),
        labour: z.number().optional().describe('an hour'),
        downtime: z.number().optional().describe('an hour'),
      })
      .prefault({}),
  }),
  run: ({ water, hardness, metals, solids, foul, prices, strongest, fillPerHour, ...rest }) => {
    const sheet = cleanoutSheet({
      ...rest,
      ...(strongest === undefined ? {} : { strongest }),
      ...(fillPerHour === undefined ? {} : { fillPerHour }),
      metals: metals ?? null,
      solids: solids ?? null,
      foul: foul ?? null,
      changeOver: null,
    })
    if (sheet.outcome === 'unreachable') throw unreachable(rest.target, sheet)
    const poured = typeof water === 'string' ? { name: water } : water
    const name = poured?.name ?? (poured !== undefined && 'id' in poured ? poured.id : undefined)
    const context = { units: 'metric', ...(name === undefined ? {} : { water: name }) } as const
    const { quantities, steps, way, downtimeHours, labourHours } = sheet
    const words = steps.map((step) => sayCleanoutStep(step, sheet, context))
    const charged = quantities.fills.at(-1)!.contents
    return {
      steps: steps.map((step, i) => ({
        step: step.id,
        title: words[i]!.title,
        text: words[i]!.text,
        volume: step.volume,
        concentrate: step.pour?.concentrate ?? 0,
        water: step.pour?.water ?? 0,
        hours: step.hours,
        signs: step.signs,
        cautions: words[i]!.cautions,
      })),
      waste: quantities.waste,
      downtimeHours,
      labourHours,
      cost: cleanoutCost(sheet, given(prices)),
      drainBy: way.way,
      charge: quantities.charge,
      afterRinses: quantities.afterRinses,
      inCharge: charged,
      notes: [
        sayCleanout(sheet, context),
        say(
          'Times are common practice, no source: put your own beside them. Chips, sludge, skimmed oil and parts are not in waste and cost.',
        ),
        say('Strengths are those of what is poured; the heel thins the cleaner a little.'),
        say('Accepted on pH, look and smell of the rinse and on a slide after one to two weeks, not on arithmetic.'),
        ...waterNotes(poured, hardness, quantities.charge.strength),
      ],
      cautions: [...new Set(words.flatMap(({ cautions }) => cautions))],
    }
  },
  say: ({ steps, cost, notes, cautions }, reader) => [
    ...steps.map(({ title, text }, i) => `${i + 1}. ${title}. ${text}`),
    ...(cost > 0 ? [say('It costs {cost}.', { cost: sayNumber(cost, 2, reader) })] : []),
    ...notes,
    ...cautions,
  ],
})

function unreachable(target: number, { low, high }: { low: number; high: number }): NoAnswer {
  const said = (percent: number) => sayPercent(percent, { units: 'metric' })
  return new NoAnswer([
    {
      pointer: '/target',
      found: String(target),
      expected: `between ${said(low)} and ${said(high)}, which water or the strongest mix makes with the rinse in the corners`,
    },
  ])
}

function waterNotes(
  water: { kind?: (typeof kinds)[number] | undefined; hardness?: number | undefined } | undefined,
  limits: { low?: number | undefined; high?: number | undefined } | undefined,
  strength: number,
): string[] {
  if (water?.kind === 'softened')
    return [say('Softened water: its sodium and chloride stay in the sump. Take another for a fresh charge.')]
  const wants = say('A fresh charge wants some minerals: very soft water foams.')
  if (water?.hardness === undefined || limits === undefined || strength > 99.9) return [wants]
  const { low = null, high = null } = limits
  const choice = firstWater([{ id: '', kind: water.kind ?? null, hardness: water.hardness }], { low, high, strength })
  if (choice.outcome === 'fits') return [say('The hardness of the fresh charge is inside its limits.')]
  const mix = sayNumber(water.hardness * (1 - strength / 100), 0)
  return [
    say('The fresh charge will have a hardness of {hardness} mg/L, outside its limits: blend the water. {wants}', {
      hardness: mix,
      wants,
    }),
  ]
}
