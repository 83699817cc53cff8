import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Setup } from '../schema/entries/index.ts'
import type { JournalReader } from '../store/store.ts'
import { type ThingHistory, thingHistory } from './things.ts'

/** The things of a book and how they came to be what they are, from its store. */
export async function readThings(journal: JournalReader): Promise<ThingHistory> {
  const [things, setups, voids] = await Promise.all([
    journal.things(),
    journal.entries({ kinds: ['setup'], order: 'time' }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const base = things.map(({ kind, id, body }) => ({ kind, id, body: JSON.parse(body) as Record<string, unknown> }))
  return thingHistory(
    base,
    setups.filter(({ id }) => !withdrawn.has(id)).map(({ body }) => JSON.parse(body) as Setup),
  )
}
