import type { SignId } from '@sumpbook/fluid'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { JournalReader } from '../store/store.ts'

/** Signs that the journal itself tells of: a fresh charge, a cleanout, a standstill. */
export interface ToldSigns {
  signs: SignId[]
  /** Known not to be so. */
  absent: SignId[]
}

/** @param since what ended before does not count; @param chargedAt of the last charge, UTC text; null without one */
export async function toldSigns(
  journal: JournalReader,
  { sump, since, until, chargedAt }: { sump: string; since: string; until: string; chargedAt: string | null },
): Promise<ToldSigns> {
  const [entries, voids] = await Promise.all([
    journal.entries({ sump, kinds: ['cleanout', 'idle'], order: 'time-backwards', until, limit: 50 }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const standing = entries.filter(({ id }) => !withdrawn.has(id))
  const isIdle = standing
    .filter(({ kind }) => kind === 'idle')
    .map(({ body }) => JSON.parse(body) as EntryOf<'idle'>)
    .some(({ to, at }) => Date.parse(to ?? at) >= Date.parse(since))
  const isCleaned = standing.some(({ kind, at }) => kind === 'cleanout' && at >= since)
  const isFresh = chargedAt !== null && chargedAt >= since
  return {
    signs: [
      ...(isIdle ? ['stood idle' as const] : []),
      ...(isFresh ? ['fresh charge' as const] : []),
      ...(isCleaned ? ['just cleaned' as const] : []),
    ],
    absent: chargedAt !== null && !isFresh ? ['fresh charge'] : [],
  }
}
