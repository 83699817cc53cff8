import { type Book, readAhead } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'

const instant = z.iso.datetime({ offset: true })
const units = z.enum(['us', 'metric', 'imperial'])

const figure = z
  .object({ mean: z.number(), sd: z.number(), low90: z.number(), high90: z.number() })
  .describe('a figure with its central 90 % interval')
const litres = figure.describe('litres of the whole system')
const percent = figure.describe('percent by volume')
const milligrams = figure.describe('mg per litre of mix, hardness as CaCO3')

const now = z.looseObject({
  concentration: percent,
  volume: litres,
  hardness: milligrams,
  chloride: milligrams,
  evaporation: figure.describe('litres a calendar day, the mean over the 28 days before'),
  carryOff: figure.describe('litres a calendar day, the mean over the 28 days before'),
  markVolume: figure.describe('litres at the full mark, as learnt'),
})
const crossing = z
  .object({
    limit: z.enum(['concentration.low', 'concentration.high', 'volume.low', 'hardness.high', 'chloride.high']),
    probability: z.number(),
    earliest: z.string(),
    likely: z.string(),
    latest: z.string(),
  })
  .nullable()
const recipe = z
  .looseObject({ action: z.string() })
  .describe('as `calc/top-up` answers; withheld while a doubt is open')
const doubt = z.looseObject({
  kind: z.string(),
  entry: z.string().nullable(),
  entries: z.array(z.string()),
  at: z.string(),
  probability: z.number(),
  volume: z.number().nullable(),
  text: z.string(),
  open: z.boolean(),
  others: z.array(z.object({ kind: z.string(), probability: z.number() })),
})
const sump = z.looseObject({
  name: z.string(),
  now,
  ahead: z.array(z.object({ days: z.number(), concentration: percent, volume: litres, hardness: milligrams })),
  crossing,
  recipe,
  doubts: z.array(doubt),
  dataAt: z.string().nullable(),
})

const fan = z.object({
  mean: z.number(),
  low90: z.number(),
  high90: z.number(),
  low50: z.number(),
  high50: z.number(),
})
const day = z.object({ at: z.string(), concentration: fan, volume: fan, hardness: fan })
const ends = z.object({ low: z.number().nullable(), high: z.number().nullable() }).nullable()
const outlook = sump.omit({ ahead: true }).extend({
  sump: z.string(),
  at: z.string(),
  limits: z.object({ hardness: ends, chloride: ends }),
  topUpToHold: z.number().nullable().describe('percent; the strength of steady top-ups that holds the target'),
  history: z.array(day).describe('with hindsight: by the records before and after each day'),
  entries: z.array(z.object({ id: z.string(), kind: z.string(), at: z.string() })),
  ahead: z.array(day.extend({ days: z.number() })),
})

const learnt = z
  .object({
    version: z.number(),
    from: z.object({ sumps: z.number(), readings: z.number(), days: z.number() }),
    text: z.string(),
  })
  .describe('what the shop’s own records taught the estimate, and from how much')
const shop = z.object({ name: z.string(), timeZone: z.string(), units })

const query = z.strictObject({
  at: instant.optional(),
  ahead: z.string().describe('days ahead, such as `7,14`').optional(),
  sump: z.string().optional(),
  units: units.optional(),
})
const outlookQuery = z.strictObject({
  at: instant.optional(),
  daysBack: z.coerce.number().int().min(0).max(3660).optional(),
  units: units.optional(),
})

/** Where sumps stand by their records, how sure that is, and where they go. */
export function estimateRoutes(api: FastifyInstance, book: Book): void {
  api.get<{ Querystring: z.infer<typeof query> }>(
    '/estimate',
    {
      schema: {
        summary:
          'Where every sump stands, where it goes with nothing added, what to pour, and which records do not fit',
        tags: ['estimate'],
        querystring: query,
        response: { 200: z.object({ at: z.string(), shop, learnt, sumps: z.record(z.string(), sump) }) },
      },
    },
    ({ query: { at, ahead, sump, units } }) =>
      book.estimate({
        ...(at === undefined ? {} : { at }),
        ...(sump === undefined ? {} : { sump }),
        ...(ahead === undefined ? {} : { ahead: readAhead(ahead) }),
        reader: units === undefined ? {} : { units },
      }),
  )
  api.get<{ Params: { id: string }; Querystring: z.infer<typeof outlookQuery> }>(
    '/sumps/:id/outlook',
    {
      schema: {
        summary: 'One sump’s past days, now, and the days ahead, with intervals of 50 and 90 %',
        tags: ['estimate'],
        params: z.object({ id: z.string() }),
        querystring: outlookQuery,
        response: { 200: outlook },
      },
    },
    ({ params: { id }, query: { at, daysBack, units } }) =>
      book.outlook(id, {
        ...(at === undefined ? {} : { at: new Date(at) }),
        ...(daysBack === undefined ? {} : { daysBack }),
        reader: units === undefined ? {} : { units },
      }),
  )
}
