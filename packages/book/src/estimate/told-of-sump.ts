import type { ShopEvent } from '@sumpbook/fluid'
import { receiverOf } from '../journal/receiver.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Entry } from '../schema/entries/index.ts'
import type { ThingHistory } from '../setup/things.ts'
import type { JournalReader, StoredEntry } from '../store/store.ts'
import { instantText } from './estimate-document.ts'
import { entryDays } from './journal-days.ts'
import type { ShopClock } from './shop-clock.ts'
import { freshTranslation } from './translation.ts'

/**
 * What happened to one sump up to an instant, without reading what happened to the others: its own entries, what was moved into it,
 * the counts of meters that it shares, and what its waters were found to be.
 */
export async function toldOfSump(
  journal: JournalReader,
  sump: string,
  { history, clock, ms }: { history: ThingHistory; clock: ShopClock; ms: number },
): Promise<ShopEvent[]> {
  const until = instantText(ms)
  const of = (kinds: readonly string[]) => journal.entries({ kinds, order: 'time', until })
  const hasMeters = history.at().meter.size > 0
  const [own, shared, metered, voids] = await Promise.all([
    journal.entries({ sump, order: 'time', until }),
    of(['transfer', 'analysis', 'verdict']),
    hasMeters ? of(['addition']) : [],
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const standing = (entries: readonly StoredEntry[]) => entries.filter(({ id }) => !withdrawn.has(id)).map(parsed)
  const entries = [
    ...standing(own),
    ...standing(shared.filter((entry) => entry.sump !== sump)).filter((entry) => concerns(entry, sump)),
    ...standing(metered.filter((entry) => entry.sump !== sump && entry.body.includes('"meter"'))),
  ]
  const source = entryDays(entries, { history, clock }, { until: ms })
  const events: ShopEvent[] = []
  const always = { from: Number.NEGATIVE_INFINITY, before: Number.POSITIVE_INFINITY }
  for await (const day of source.days(always, freshTranslation())) {
    events.push(
      ...day.events.filter((event) => event.sump === sump || (event.kind === 'transfer' && event.to === sump)),
    )
  }
  return events
}

const parsed = ({ body }: StoredEntry) => JSON.parse(body) as Entry

const concerns = (entry: Entry, sump: string) => entry.kind !== 'transfer' || receiverOf(entry) === sump
