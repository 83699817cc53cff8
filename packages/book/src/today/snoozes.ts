import { startOfDay } from '../journal/calendar.ts'
import { utc } from '../journal/order.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { JournalReader } from '../store/store.ts'
import type { Snoozed } from './today.ts'

/** Nobody puts anything off for longer: after so many days it is back, whatever was written. */
export const longestSnoozeDays = 31

/**
 * What is put off at an instant, by the key of its line; of several the one that was written last. One without an end, or without
 * what it is about, puts nothing off; a day as its end means until that day begins in the shop.
 */
export async function snoozedAt(
  journal: JournalReader,
  { at, until, timeZone }: { at: Date; until: Date; timeZone: string },
): Promise<Map<string, Snoozed & { at: number }>> {
  const since = new Date(at.getTime() - longestSnoozeDays * 86_400_000).toISOString()
  const [entries, voids] = await Promise.all([
    journal.entries({ kinds: ['snooze'], order: 'time', since, until: until.toISOString() }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const snoozed = new Map<string, Snoozed & { at: number }>()
  for (const { id, at: writtenAt, body } of entries) {
    const entry = JSON.parse(body) as EntryOf<'snooze'>
    if (withdrawn.has(id) || entry.what === undefined || entry.until === undefined) continue
    const end = entry.until.length === 10 ? startOfDay(entry.until, timeZone) : utc(entry.until)
    if (Date.parse(end) <= at.getTime()) continue
    snoozed.set(entry.what, {
      entry: id,
      by: entry.by ?? null,
      why: entry.why ?? '',
      until: end,
      at: Date.parse(writtenAt),
    })
  }
  return snoozed
}
