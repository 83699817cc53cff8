import { receiverOf } from '../journal/receiver.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Entry, EntryOf, Setup } from '../schema/entries/index.ts'
import { type ThingHistory, thingHistory } from '../setup/things.ts'
import type { JournalReader, StoredEntry } from '../store/store.ts'
import type { ShopClock } from './shop-clock.ts'
import { differencesOf } from './things-seen.ts'

/** How much of a journal has been seen. */
export interface Seen {
  /** Place of the last entry, and the chain's hash there. */
  seq: number
  hash: string
  /** The seal of the things that came in. */
  things: string
}

/** Entries read at once. */
const atOnce = 5000

/**
 * The first day of the shop that is other than it was when the journal had been seen so far: that of the earliest entry that
 * came since, that a void took away or brought back, or from which a thing is other. −∞ where everything may be, +∞ where
 * nothing is.
 */
export async function firstChangedDay(
  journal: JournalReader,
  seen: Seen,
  now: Seen,
  clock: ShopClock,
): Promise<number> {
  if (now.things !== seen.things || now.seq < seen.seq) return Number.NEGATIVE_INFINITY
  if (now.hash === seen.hash) return Number.POSITIVE_INFINITY
  if (!(await goesOnFrom(journal, seen))) return Number.NEGATIVE_INFINITY
  const { first, governs } = await arrivedSince(journal, seen.seq)
  let day = first === null ? Number.POSITIVE_INFINITY : dayOf(first, clock)
  if (governs) day = Math.min(day, await changedMeaning(journal, seen.seq, clock))
  return day
}

/** Whether this is the journal that was seen: another book may have been put in its place. */
async function goesOnFrom(journal: JournalReader, { seq, hash }: Seen): Promise<boolean> {
  if (seq === 0) return true
  const [last] = await journal.entries({ order: 'arrival', after: { seq: seq - 1 }, limit: 1 })
  return last?.seq === seq && last.hash === hash
}

const dayOf = (instant: string, clock: ShopClock) => Math.floor(clock.at(Date.parse(instant)))

async function arrivedSince(journal: JournalReader, seq: number): Promise<{ first: string | null; governs: boolean }> {
  let first: string | null = null
  let governs = false
  for (let after = seq; ; ) {
    const page = await journal.entries({ order: 'arrival', after: { seq: after }, limit: atOnce })
    for (const { at, kind } of page) {
      if (kind === 'void' || kind === 'setup') governs = true
      else if (first === null || Date.parse(at) < Date.parse(first)) first = at
    }
    if (page.length < atOnce) return { first, governs }
    after = page.at(-1)!.seq
  }
}

/** What voids and set-ups that came since change of the days before. */
async function changedMeaning(journal: JournalReader, seq: number, clock: ShopClock): Promise<number> {
  const [things, stored] = await Promise.all([
    journal.things(),
    journal.entries({ kinds: ['setup', 'void'], order: 'time' }),
  ])
  const base = things.map(({ kind, id, body }) => ({ kind, id, body: JSON.parse(body) as Record<string, unknown> }))
  const before = meaningOf(stored.filter((entry) => entry.seq <= seq))
  const after = meaningOf(stored)
  const turned = [
    ...[...before.withdrawn].filter((id) => !after.withdrawn.has(id)),
    ...[...after.withdrawn].filter((id) => !before.withdrawn.has(id)),
  ]
  const bodies = await journal.bodies(turned)
  const days = [...bodies.values()].map((body) => JSON.parse(body) as Entry)
  const ofEntries = days.filter(({ kind }) => kind !== 'setup' && kind !== 'void').map(({ at }) => dayOf(at, clock))
  const ofThings = await changedThings(
    journal,
    { before: thingHistory(base, before.setups), after: thingHistory(base, after.setups) },
    clock,
  )
  return Math.min(Number.POSITIVE_INFINITY, ...ofEntries, ofThings)
}

/** The voids and set-ups of a journal, settled among themselves. */
function meaningOf(stored: readonly StoredEntry[]): { withdrawn: Set<string>; setups: Setup[] } {
  const entries = stored.map(({ id, body }) => ({ id, entry: JSON.parse(body) as EntryOf<'setup' | 'void'> }))
  const withdrawn = withdrawnBy(
    entries.flatMap(({ id, entry }) => (entry.kind === 'void' ? [{ id, target: entry.entry.toLowerCase() }] : [])),
  )
  const setups = entries.flatMap(({ id, entry }) => (entry.kind === 'setup' && !withdrawn.has(id) ? [entry] : []))
  return { withdrawn, setups }
}

async function changedThings(
  journal: JournalReader,
  { before, after }: { before: ThingHistory; after: ThingHistory },
  clock: ShopClock,
): Promise<number> {
  let day = Number.POSITIVE_INFINITY
  for (const { since, newSumps } of differencesOf(before, after)) {
    const began = since === '' ? Number.NEGATIVE_INFINITY : dayOf(since, clock)
    if (newSumps === null) return Math.min(day, began)
    for (const sump of newSumps) day = Math.min(day, Math.max(began, await firstDayOf(journal, sump, clock)))
  }
  return day
}

/** The day of the first entry that a sump has a part in. */
async function firstDayOf(journal: JournalReader, sump: string, clock: ShopClock): Promise<number> {
  const [first] = await journal.entries({ sump, order: 'time', limit: 1 })
  const transfers = await journal.entries({ kinds: ['transfer'], order: 'time' })
  const into = transfers.find(({ body }) => receiverOf(JSON.parse(body) as EntryOf<'transfer'>) === sump)
  return Math.min(
    ...[first, into].map((entry) => (entry === undefined ? Number.POSITIVE_INFINITY : dayOf(entry.at, clock))),
  )
}
