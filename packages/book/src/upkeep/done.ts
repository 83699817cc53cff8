import type { ShopClock } from '../estimate/shop-clock.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { UpkeepTask } from '../schema/things/upkeep-task.ts'
import type { JournalReader } from '../store/store.ts'

/** Entries that say that something was done. */
export type DoneEntry = EntryOf<'upkeep' | 'skim' | 'check' | 'analysis'>

export const doneKinds = ['upkeep', 'skim', 'check', 'analysis'] as const

/** What was done in a time, oldest first, without what was withdrawn. */
export async function readDone(journal: JournalReader, span: { since: string; until: string }): Promise<DoneEntry[]> {
  const [entries, voids] = await Promise.all([
    journal.entries({ kinds: doneKinds, order: 'time', ...span }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  return entries.filter(({ id }) => !withdrawn.has(id)).map(({ body }) => JSON.parse(body) as DoneEntry)
}

/** The shop's days on which a task was done, rising, and who did it. */
export function doneDays(
  task: UpkeepTask,
  done: readonly DoneEntry[],
  clock: ShopClock,
): { day: number; by: string | null }[] {
  return done
    .filter((entry) => isDoing(entry, task))
    .map(({ at, by = null }) => ({ day: Math.floor(clock.at(Date.parse(at))), by }))
}

/** Of the task's kind, at its place; an upkeep in its words, whoever wrote them large or small. */
function isDoing(entry: DoneEntry, { sump, about, task, counts = 'upkeep' }: UpkeepTask): boolean {
  if (entry.kind !== counts) return false
  if (!isAt(entry, sump, about)) return false
  return entry.kind !== 'upkeep' || plain(entry.task ?? '') === plain(task)
}

function isAt(
  entry: { sump?: string | undefined; about?: { kind: string; id?: string | undefined } | undefined },
  sump: string | undefined,
  about: UpkeepTask['about'],
): boolean {
  if (sump !== undefined) return entry.sump === sump
  const { kind, id } = about ?? { kind: 'shop' }
  if (entry.about === undefined) return false
  return entry.about.kind === kind && (kind === 'shop' || entry.about.id === id)
}

export const plain = (words: string) => words.trim().toLowerCase().replaceAll(/\s+/g, ' ')
