import type { ReadField } from '@sumpbook/fluid'
import { utc } from '../journal/order.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { EntryOf, Reading } from '../schema/entries/index.ts'
import type { Value } from '../schema/values.ts'
import type { JournalReader } from '../store/store.ts'

/** What of a reading the diagnosis weighs, and for how many days it counts (common practice, no source): minerals change slowly. */
export const countsDays = {
  titration: 14,
  ph: 14,
  nitrite: 14,
  bacteria: 14,
  fungi: 14,
  trampOil: 14,
  temperature: 7,
  dissolvedOxygen: 7,
  hardness: 60,
  chloride: 60,
  conductivity: 60,
  sulfate: 60,
  nitrate: 60,
} as const satisfies Partial<Record<ReadField, number>>
export type WeighedField = keyof typeof countsDays
export const weighedFields = Object.keys(countsDays) as WeighedField[]

/** One figure of the journal. */
export interface Read {
  field: WeighedField
  value: Value
  entry: string
  /** UTC text. */
  at: string
}

export interface ReadOfCharge {
  /** The youngest of each field since the charge. */
  youngest: Read[]
  /** The oldest pH since the charge, and the nitrite before the youngest; what later ones are held against. */
  before: Read[]
  /** The youngest reading by refractometer. */
  brix: Reading | null
  charge: EntryOf<'charge'> | null
}

/** So far back is read where no charge was written down. */
const farthestDays = 366

/** What was read of the fluid that is in a sump: of an earlier charge nothing counts. */
export async function readOfCharge(journal: JournalReader, sump: string, until: string): Promise<ReadOfCharge> {
  const withdrawn = withdrawnBy(await journal.voids())
  const stands = ({ id }: { id: string }) => !withdrawn.has(id)
  const charges = await journal.entries({ sump, kinds: ['charge'], order: 'time', until })
  const last = charges.filter(stands).at(-1)
  const farthest = new Date(Date.parse(until) - farthestDays * 86_400_000).toISOString()
  const since = last === undefined || last.at < farthest ? farthest : last.at
  const entries = await journal.entries({ sump, kinds: ['reading'], order: 'time', since, until })
  const readings = entries.filter(stands).map(({ body }) => JSON.parse(body) as Reading)
  const reads = readings.flatMap((reading) =>
    weighedFields.flatMap((field): Read[] => {
      const value = reading[field]
      return value === undefined ? [] : [{ field, value, entry: reading.id, at: utc(reading.at) }]
    }),
  )
  const of = (field: WeighedField) => reads.filter((read) => read.field === field)
  return {
    youngest: weighedFields.flatMap((field) => of(field).at(-1) ?? []),
    before: [of('ph')[0], of('nitrite').at(-2)].filter((read) => read !== undefined),
    brix: readings.findLast(({ brix }) => brix !== undefined) ?? null,
    charge: last === undefined ? null : (JSON.parse(last.body) as EntryOf<'charge'>),
  }
}
