import { say, sayNumber, sayVolume, vesselAt } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation, NoAnswer } from './calculation.ts'
import { given } from './given.ts'

const mm = z.number()
const from = mm.optional()
const shape = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('box'), length: mm, width: mm, height: mm, from }),
  z.strictObject({ kind: z.literal('horizontal-cylinder'), diameter: mm, length: mm, from }),
  z.strictObject({ kind: z.literal('vertical-cylinder'), diameter: mm, height: mm, from }),
  z.strictObject({
    kind: z.literal('frustum'),
    bottomLength: mm,
    bottomWidth: mm,
    topLength: mm,
    topWidth: mm,
    height: mm,
    from,
  }),
  z.strictObject({ kind: z.literal('cone-frustum'), bottomDiameter: mm, topDiameter: mm, height: mm, from }),
])

/** What a sump or tank holds at a level. */
export const vesselCalculation = calculation({
  name: 'vessel',
  summary: 'litres at a level, from the vessel’s shapes or its dip table',
  input: z
    .strictObject({
      shapes: z.array(shape).min(1).optional(),
      displaced: z.number().default(0).describe('litres taken up by what stands in it'),
      table: z
        .array(z.tuple([z.number().min(0), z.number().min(0)]))
        .min(2)
        .refine(
          (rows) =>
            rows.every(([level, litres], i) => i === 0 || (level > rows[i - 1]![0] && litres >= rows[i - 1]![1])),
          {
            error: 'rows whose millimetres rise and whose litres never fall',
          },
        )
        .optional(),
      level: mm.describe('millimetres above the floor'),
    })
    .refine(({ shapes, table }) => (shapes === undefined) !== (table === undefined), {
      error: 'either shapes or a table',
      path: ['shapes'],
    }),
  run: ({ shapes, displaced, table, level }) => {
    const at = vesselAt(table === undefined ? { shapes: shapes!.map(given) as never, displaced } : { table }, level)
    if (at.outcome === 'outside') {
      throw new NoAnswer([{ pointer: '/level', found: `${at.found} mm`, expected: `${at.low} to ${at.high} mm` }])
    }
    const { outcome: _, ...vessel } = at
    return { ...vessel, notes: [say('What pumps, pipes and sludge take up is spread evenly over the depth.')] }
  },
  say: ({ volume, full, table }, reader) => [
    say('{volume} of {full}.', { volume: sayVolume(volume, reader), full: sayVolume(full, reader) }),
    ...table.map(([level, litres]) => `${sayNumber(level, 0, reader)} mm  ${sayVolume(litres, reader)}`),
  ],
})
