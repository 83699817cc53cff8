import { needsFollowUp, readSigns } from '@sumpbook/fluid'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { JournalReader } from '../store/store.ts'
import type { Observed } from './answer-types.ts'

/** Observations that stand since an instant, up to another, oldest first. */
export async function observedSince(
  journal: JournalReader,
  { since, until, sump }: { since: string; until: string; sump?: string },
): Promise<Observed[]> {
  const of = { ...(sump === undefined ? {} : { sump }), order: 'time', since, until } as const
  const [entries, verdicts, voids] = await Promise.all([
    journal.entries({ ...of, kinds: ['observation'] }),
    journal.entries({ order: 'time', since, until, kinds: ['verdict'] }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const answered = new Map(
    verdicts
      .filter(({ id }) => !withdrawn.has(id))
      .flatMap(({ at, body }) =>
        ((JSON.parse(body) as EntryOf<'verdict'>).entries ?? []).map((named) => [named.toLowerCase(), at] as const),
      ),
  )
  return entries.flatMap(({ id, sump, at, body }): Observed[] => {
    if (sump === null || withdrawn.has(id)) return []
    const { signs: words = [], severity, note } = JSON.parse(body) as EntryOf<'observation'>
    const { signs, notUnderstood } = readSigns(words)
    return [
      {
        entry: id,
        sump,
        at,
        signs,
        notUnderstood,
        severity: severity === undefined ? null : String(severity),
        note: note ?? null,
        toFollowUp: signs.filter(needsFollowUp),
        answeredAt: answered.get(id.toLowerCase()) ?? null,
      },
    ]
  })
}
