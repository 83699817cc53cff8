import {
  type Dispensed,
  dispense,
  pourWays,
  type RecipeWords,
  sayAlternative,
  sayRecipe,
  sayWay,
  topUp,
} from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation } from './calculation.ts'
import { given } from './given.ts'

const band = z.strictObject({ low: z.number(), high: z.number() })
const water = z.strictObject({
  id: z.string().min(1),
  name: z.string().optional(),
  kind: z.enum(['tap', 'well', 'softened', 'reverse-osmosis', 'deionised']).optional(),
  hardness: z.number().min(0).optional(),
  chloride: z.number().min(0).optional(),
  sulfate: z.number().min(0).optional(),
  nitrate: z.number().min(0).optional(),
  conductivity: z.number().min(0).optional(),
  ph: z.number().min(0).max(14).optional(),
  cost: z.number().min(0).optional(),
  costPerLitre: z.number().min(0).optional(),
})
const container = z.strictObject({
  name: z.string().default('bucket'),
  capacity: z.number(),
  graduation: z.number().optional(),
})

/** The recipe of one sump: what to pour so that it stands at its target, at its mark. */
export const topUpCalculation = calculation({
  name: 'top-up',
  summary: 'what to pour into a sump so that it stands at its target at the full mark',
  input: z.strictObject({
    volume: z.number().describe('litres seen in the sump'),
    concentration: z.number().describe('percent'),
    fillVolume: z.number().describe('litres at the full mark, pumps stopped'),
    target: z.number().describe('percent'),
    band: band.optional(),
    maxStrength: z.number().default(20).describe('the strongest mix that can be poured, percent'),
    minStrength: z.number().default(0),
    pumps: z.enum(['running', 'stopped']).default('stopped'),
    holdUp: z.number().default(0).describe('litres out in lines and conveyor while the pumps run'),
    capacity: z.number().optional().describe('litres to the brim; 1.25 × fillVolume without it'),
    minVolume: z.number().optional().describe("litres at the pumps' suction"),
    class: z.enum(['soluble-oil', 'semi-synthetic', 'synthetic', 'straight-oil']).optional(),
    waters: z.array(water).default([]),
    concentrationSd: z.number().default(0),
    volumeSd: z.number().default(0),
    hardness: z.number().optional().describe('of the mix in the sump, mg/L'),
    doubt: z.boolean().default(false),
    premixes: z
      .array(z.strictObject({ id: z.string(), strength: z.number(), volume: z.number() }))
      .default([])
      .describe('mix that stands ready'),
    mixerStrengths: z.array(z.number()).default([]).describe('what the settings of the mixer give, percent'),
    container: container.optional().describe('the bucket it is carried in'),
  }),
  run: ({ container: bucket, premixes, mixerStrengths, waters, maxStrength, minStrength, ...sump }) => {
    const recipe = topUp(given(sump), { maxStrength, minStrength, waters: waters.map(given) })
    const dispensed = recipe.add === null || bucket === undefined ? null : dispense(recipe.add, given(bucket))
    const onHand = { premixes, mixerStrengths, strongest: maxStrength, leanest: minStrength, waters: waters.map(given) }
    const hasOnHand = premixes.length > 0 || mixerStrengths.length > 0
    const ways = hasOnHand && recipe.result !== null ? pourWays(given(sump), onHand) : []
    const { because, ...answer } = recipe
    const words = sayRecipe(recipe, { units: 'metric', ...contextOf(waters, dispensed, sump.fillVolume) })
    return { ...answer, ways, reasons: because, dispensed, notes: notesOf(words), cautions: words.cautions }
  },
  say: ({ reasons, dispensed, ways, ...answer }, reader, { waters, fillVolume }) => {
    const recipe = { ...answer, because: reasons }
    const context = { ...reader, ...contextOf(waters, dispensed, fillVolume) }
    const words = sayRecipe(recipe, context)
    const others = recipe.alternatives.map((alternative) => sayAlternative(alternative, context))
    return [...notesOf(words), ...others, ...ways.slice(0, 5).map((way) => sayWay(way, context)), ...words.cautions]
  },
})

const contextOf = (
  waters: readonly { id: string; name?: string | undefined }[],
  dispensed: Dispensed | null,
  fillVolume: number,
) => ({
  waterNames: Object.fromEntries(waters.map(({ id, name = id }) => [id, name])),
  dispensed,
  fillVolume,
})

const notesOf = ({ headline, how, outcome, because }: RecipeWords) =>
  [`${headline}.`, how, outcome, ...because].filter((sentence) => sentence !== '')
