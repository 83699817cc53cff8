import type { EntryOf } from '../schema/entries/index.ts'
import type { JournalReader } from '../store/store.ts'
import { utc } from './order.ts'
import { withdrawnBy } from './withdrawn.ts'

/** The kinds of entries that measure a thing of the shop. */
export const measuringKinds = ['analysis', 'check'] as const

/** A water's analyses, a mixer's or an instrument's checks. */
export type Measurement = EntryOf<(typeof measuringKinds)[number]>

/** What was measured of one thing of the shop, oldest first, without what was withdrawn. A thing nobody measured has none. */
export async function measurementsOf(
  journal: JournalReader,
  { kind, id }: { kind: string; id: string },
): Promise<Measurement[]> {
  const [entries, voids] = await Promise.all([
    journal.entries({ about: { kind, id }, kinds: [...measuringKinds], order: 'time' }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  return entries
    .filter((stored) => !withdrawn.has(stored.id))
    .map(({ body }) => JSON.parse(body) as Measurement)
    .map((entry) => ({ ...entry, at: utc(entry.at) }))
}
