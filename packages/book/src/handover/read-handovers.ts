import {
  type HandoverParts,
  type Reader,
  say,
  sayHandoverNote,
  sayReason,
  sayUntilDay,
  unitsHere,
} from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { sayEntry } from '../journal/say-entry.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Entry, EntryOf } from '../schema/entries/index.ts'
import type { Things } from '../setup/things.ts'
import type { JournalReader } from '../store/store.ts'
import { readToday } from '../today/read-today.ts'
import type { Today } from '../today/today.ts'
import { type HandoverNote, type Handovers, readStep } from './answer-types.ts'

export interface HandoverQuestion {
  at: Date
  /** Entries after it do not count; the time of asking unless given. */
  until?: Date
  reader?: Partial<Reader>
}

/** Notes are shown for so many days. */
const shownDays = 7
const dayMs = 86_400_000
/** What somebody did, as against what they saw. */
const doing = ['charge', 'addition', 'drawoff', 'transfer', 'skim', 'cleanout', 'upkeep', 'receipt', 'pickup']

/** The note that this shift might leave, from what it wrote down and from Today's list, and the notes of the last days. Queries never write. */
export async function readHandovers(parts: BookParts, question: HandoverQuestion): Promise<Handovers> {
  const { at, until = at, reader = {} } = question
  const today = await readToday(parts, question)
  const things = (await parts.things()).at(until.toISOString())
  const asReader = { units: unitsHere(things.shop), ...reader }
  const done = await doneSince(parts.journal, { since: today.shift.began, until: until.toISOString() })
  const proposal = {
    ...doneParts(done, things, asReader),
    ...openParts(today, { ...asReader, timeZone: things.shop.timeZone, now: at.toISOString() }),
  }
  return {
    at: at.toISOString(),
    shift: today.shift,
    proposal: { ...proposal, text: sayHandoverNote(proposal) },
    notes: await lastNotes(parts.journal, { at, until }),
  }
}

async function doneSince(journal: JournalReader, query: { since: string; until: string }): Promise<Entry[]> {
  const [entries, voids] = await Promise.all([
    journal.entries({ ...query, kinds: ['reading', ...doing], order: 'time' }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  return entries.filter(({ id }) => !withdrawn.has(id)).map(({ body }) => JSON.parse(body) as Entry)
}

function doneParts(entries: readonly Entry[], things: Things, reader: Reader): Pick<HandoverParts, 'done' | 'read'> {
  const nameOf = (entry: Entry): string | null => {
    const sump = 'sump' in entry && typeof entry.sump === 'string' ? entry.sump : null
    return sump === null ? null : (things.sump.get(sump)?.name ?? sump)
  }
  const done = entries
    .filter(({ kind }) => kind !== 'reading')
    .map((entry) => {
      const name = nameOf(entry)
      return `${name === null ? '' : `${name}: `}${sayEntry(entry, things, reader)}`
    })
  const read = entries.filter(({ kind }) => kind === 'reading').map((entry) => nameOf(entry) ?? '')
  return { done, read: [...new Set(read)] }
}

function openParts(
  { items, due, later, putOff }: Today,
  reader: Reader & { timeZone: string; now: string },
): Pick<HandoverParts, 'open' | 'putOff' | 'results'> {
  const duties = [...due, ...(later?.due ?? [])]
  const off = [
    ...putOff.items.map(({ name, words, snoozed }) => ({ words: `${name}: ${words.headline}`, snoozed })),
    ...putOff.due.map(({ headline, snoozed }) => ({ words: headline, snoozed })),
  ]
  return {
    open: [
      ...[...items, ...(later?.items ?? [])].map(({ name, words }) => `${name}: ${words.headline}`),
      ...duties.filter(({ kind }) => kind !== 'result').map(({ headline }) => headline),
    ],
    putOff: off.map(({ words, snoozed }) => {
      if (snoozed === null) return words
      const withEnd = say('{words}, {until}', { words, until: sayUntilDay(snoozed.until, reader) })
      return snoozed.why === '' ? withEnd : `${withEnd}: ${sayReason(snoozed.why)}`
    }),
    results: duties.filter(({ kind }) => kind === 'result').map(({ headline }) => headline),
  }
}

async function lastNotes(journal: JournalReader, { at, until }: { at: Date; until: Date }): Promise<HandoverNote[]> {
  const query = {
    order: 'time',
    since: new Date(at.getTime() - shownDays * dayMs).toISOString(),
    until: until.toISOString(),
  } as const
  const [entries, voids] = await Promise.all([
    journal.entries({ ...query, kinds: ['handover', 'signoff'] }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const standing = entries.filter(({ id }) => !withdrawn.has(id)).map(({ body }) => JSON.parse(body) as Entry)
  const signoffs = standing.filter((entry): entry is EntryOf<'signoff'> => entry.kind === 'signoff')
  return standing
    .filter((entry): entry is EntryOf<'handover'> => entry.kind === 'handover')
    .map(({ id, at: writtenAt, by = null, text = '' }) => ({
      ...{ entry: id, at: writtenAt, by, text },
      readBy: signoffs
        .filter(({ step }) => step === readStep(id))
        .map((one) => ({ entry: one.id, by: one.by ?? null, at: one.at })),
    }))
    .reverse()
}
