import { utc } from '../journal/order.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Entry } from '../schema/entries/index.ts'
import type { ThingHistory } from '../setup/things.ts'
import type { JournalReader, StoredEntry } from '../store/store.ts'
import { receiverOf, type SumpStory, tellStories } from './events.ts'

/** Where a sump stands follows from its last readings and what came after: this much of the journal nearly always holds them. */
const recentDays = 60

/**
 * Every sump's story as far back as it matters. The youngest part of the journal is read for all sumps at once; a sump whose
 * level and strength were not both read in it is told again from its beginning, with the sumps that anything came from.
 */
export async function readStories(
  journal: JournalReader,
  history: ThingHistory,
  at: Date,
): Promise<{ stories: Map<string, SumpStory>; recent: Entry[] }> {
  const until = at.toISOString()
  const since = await sinceWhen(journal, until)
  const [window, governing, voids] = await Promise.all([
    journal.entries({ order: 'time', since, until }),
    journal.entries({ order: 'time', until, kinds: ['charge', 'transfer'] }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const read = (entries: readonly StoredEntry[]) =>
    entries.filter(({ id }) => !withdrawn.has(id)).map(({ body }) => JSON.parse(body) as Entry)
  const recent = read(window)
  const governors = read(governing)
  const stories = tellStories([...governors.filter((entry) => utc(entry.at) < since), ...recent], history)
  const open = withSources(
    [...stories.values()].filter(({ isSettled }) => !isSettled).map(({ sump }) => sump),
    governors,
  )
  if (open.size > 0) {
    const whole = await Promise.all([...open].map((sump) => journal.entries({ order: 'time', until, sump })))
    const retold = tellStories(read(whole.flat().sort(inTime)), history)
    for (const sump of open) if (stories.has(sump)) stories.set(sump, retold.get(sump)!)
  }
  return { stories, recent }
}

/** The beginning of the youngest part: counted from the youngest entry, since a book may not have been written for long. */
async function sinceWhen(journal: JournalReader, until: string): Promise<string> {
  const [youngest] = await journal.entries({ order: 'time-backwards', until, limit: 1 })
  return new Date(Date.parse(youngest?.at ?? until) - recentDays * 86_400_000).toISOString()
}

/** Sumps and all that fluid was ever moved into them from. */
function withSources(sumps: readonly string[], governors: readonly Entry[]): Set<string> {
  const all = new Set(sumps)
  for (const sump of all) {
    for (const entry of governors) if (entry.kind === 'transfer' && receiverOf(entry) === sump) all.add(entry.sump)
  }
  return all
}

const inTime = (a: StoredEntry, b: StoredEntry) => compare(a.at, b.at) || a.rank - b.rank || compare(a.id, b.id)

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
