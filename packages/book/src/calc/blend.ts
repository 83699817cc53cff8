import {
  blendWaters,
  type ConflictingLimit,
  type MineralLimits,
  makeUpLimits,
  minerals,
  say,
  sayNumber,
  sayVolume,
} from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation, NoAnswer } from './calculation.ts'
import { given } from './given.ts'

const mineral = z.number().optional()
const water = z.strictObject({
  id: z.string().min(1),
  name: z.string().optional(),
  kind: z.enum(['tap', 'well', 'softened', 'reverse-osmosis', 'deionised']).optional(),
  hardness: mineral,
  chloride: mineral,
  sulfate: mineral,
  nitrate: mineral,
  conductivity: mineral,
  ph: mineral,
  cost: z.number().optional().describe('money a litre, for every water or for none'),
  costPerLitre: z.number().optional().describe('the same as cost'),
})
const ends = z.strictObject({ low: z.number().optional(), high: z.number().optional() })
const limitsShape = z.strictObject({
  hardness: ends.optional(),
  chloride: ends.optional(),
  sulfate: ends.optional(),
  nitrate: ends.optional(),
})

const input = z
  .strictObject({
    waters: z.array(water),
    limits: limitsShape.optional().describe('of the blended water, mg/L'),
    sumpLimits: limitsShape.optional().describe('of the sump at balance, mg/L; with cycles'),
    cycles: z.number().optional().describe('how many times richer than its top-ups the sump becomes'),
    volume: z.number().default(1).describe('litres'),
  })
  .superRefine(({ waters, limits, sumpLimits, cycles }, context) => {
    const fault = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message })
    if ((limits === undefined) === (sumpLimits === undefined)) {
      fault(['limits'], 'either limits of the water, or sumpLimits with cycles')
    }
    if ((sumpLimits === undefined) !== (cycles === undefined))
      fault(['cycles'], 'cycles with sumpLimits, and not without')
    const priced = waters.some(({ cost, costPerLitre }) => cost !== undefined || costPerLitre !== undefined)
    for (const [index, { id, cost, costPerLitre, ...values }] of waters.entries()) {
      if (waters.findIndex((other) => other.id === id) < index) fault(['waters', index, 'id'], 'each id once')
      if (priced && cost === undefined && costPerLitre === undefined) {
        fault(['waters', index, 'cost'], 'a cost for every water, or for none')
      }
      for (const name of minerals) {
        const { low, high } = (limits ?? sumpLimits)?.[name] ?? {}
        if (values[name] === undefined && (low !== undefined || high !== undefined)) {
          fault(['waters', index, name], 'a value, since there is a limit for it')
        }
      }
    }
  })

/** How much of which water. */
export const blendCalculation = calculation({
  name: 'blend',
  summary: 'how much of which water makes a volume inside limits, cheapest or with least fuss',
  input,
  run: ({ waters, limits, sumpLimits, cycles = 1, volume }) => {
    const asked = sumpLimits ?? limits ?? {}
    const ofWater = sumpLimits === undefined ? asked : makeUpLimits({ sumpLimits, cycles })
    const blend = blendWaters({
      waters: waters.map(({ name: _, conductivity: __, ph: ___, cost, costPerLitre, ...rest }) =>
        given({ ...rest, cost: cost ?? costPerLitre }),
      ),
      limits: ofWater,
      volume,
    })
    if (blend.outcome === 'only-softened') {
      const expected = 'a water that is not softened: the sodium and chloride of softened water stay in the sump'
      throw new NoAnswer([{ pointer: '/waters', found: 'softened water only', expected }])
    }
    if (blend.outcome === 'conflict') {
      const field = sumpLimits === undefined ? 'limits' : 'sumpLimits'
      throw new NoAnswer(
        blend.conflict.map((limit) => faultOf(limit, { field, cycles, alone: blend.conflict.length === 1 })),
      )
    }
    const { outcome: _, ...found } = blend
    return {
      ...found,
      limits: ofWater,
      notes: notesOf({ leftOut: found.leftOut, derived: sumpLimits !== undefined, cycles }),
    }
  },
  say: ({ parts, hardness, chloride, sulfate, nitrate, cost, limits, notes }, reader) => [
    ...parts.map(({ id, fraction, volume }) =>
      say('{volume} of {water} ({percent} %)', {
        volume: sayVolume(volume, reader),
        water: id,
        percent: sayNumber(100 * fraction, 1, reader),
      }),
    ),
    ...Object.entries({ hardness, chloride, sulfate, nitrate }).map(([name, value]) =>
      value === null ? '' : sayMineral(say(name), sayNumber(value, 0, reader), limits[name as keyof MineralLimits]),
    ),
    cost === null ? '' : say('It costs {cost}.', { cost: sayNumber(cost, 2, reader) }),
    ...notes,
  ],
})

function faultOf(
  { mineral, end, limit, reach }: ConflictingLimit,
  { field, cycles, alone }: { field: string; cycles: number; alone: boolean },
) {
  const word = end === 'low' ? 'at least' : 'at most'
  const beside = alone
    ? 'which is as near as these waters come'
    : 'as near as these waters come while the other limits hold'
  return {
    pointer: `/${field}/${mineral}/${end}`,
    found: `${word} ${sayNumber(limit * cycles, 1, {}, 0)} mg/L of ${mineral}`,
    expected: `${word} ${sayNumber(reach * cycles, 1, {}, 0)} mg/L, ${beside}`,
  }
}

function notesOf({
  leftOut,
  derived,
  cycles,
}: {
  leftOut: readonly string[]
  derived: boolean
  cycles: number
}): string[] {
  const notes = [say('Analyses drift: taps by season, exchangers and membranes as they run out.')]
  if (derived)
    notes.push(
      say('The limits of the make-up are those of the sump divided by its {cycles} cycles.', {
        cycles: sayNumber(cycles, 2, {}, 0),
      }),
    )
  if (leftOut.length > 0) {
    notes.push(
      say('Left out: {waters}. Softened water is no routine top-up: its sodium and chloride stay in the sump.', {
        waters: leftOut.join(', '),
      }),
    )
  }
  return notes
}

function sayMineral(
  mineral: string,
  value: string,
  { low, high }: { low?: number | undefined; high?: number | undefined } = {},
): string {
  const said = {
    mineral,
    value,
    low: low === undefined ? '' : sayNumber(low, 0),
    high: high === undefined ? '' : sayNumber(high, 0),
  }
  if (low !== undefined && high !== undefined) return say('{mineral} {value} mg/L, {low} to {high} allowed', said)
  if (high !== undefined) return say('{mineral} {value} mg/L, at most {high} allowed', said)
  if (low !== undefined) return say('{mineral} {value} mg/L, at least {low} wanted', said)
  return `${mineral} ${value} mg/L`
}
