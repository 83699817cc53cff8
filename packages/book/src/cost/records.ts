import { setImmediate as nextTurn } from 'node:timers/promises'
import type { BookParts } from '../book-parts.ts'
import { amountOf } from '../estimate/amounts.ts'
import { calendarOf } from '../estimate/calendar-of.ts'
import { fluidIn, rememberCharge } from '../estimate/pour-events.ts'
import type { ShopClock } from '../estimate/shop-clock.ts'
import { specOf } from '../estimate/sump-spec.ts'
import { freshTranslation, type Translation } from '../estimate/translation.ts'
import type { Head } from '../journal/chain.ts'
import { readEnvelope } from '../journal/envelope.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Entry, EntryOf } from '../schema/entries/index.ts'
import type { ThingHistory, Things } from '../setup/things.ts'
import type { EntryQuery, JournalReader, StoredEntry } from '../store/store.ts'
import type { DaySpan } from './answer-types.ts'
import { type LotPrices, lotPriceLog, lotPricesOf } from './prices.ts'
import { type Span, spanOf } from './span.ts'

/** One entry of a span with its place in the shop's time. */
export interface Recorded {
  id: string
  entry: Entry
  /** UTC, fixed width. */
  at: string
  /** In days of the shop. */
  day: number
  ms: number
  /** Who was signed in, else as the entry says. */
  by: string | null
}

/** An entry that was withdrawn, by whom and why. */
export interface Withdrawn extends Recorded {
  void: { id: string; at: string; by: string | null; reason: string | null }
}

/** What was written of a span of days, up to one head of the journal. */
export interface SpanRecords {
  span: Span
  head: Head
  history: ThingHistory
  /** As they are now. */
  things: Things
  clock: ShopClock
  /** Entries that stand and count, in the order of the journal. */
  entries: Recorded[]
  /** Of the days before the span, as many as a strength reaches: readings only, oldest first. */
  before: Recorded[]
  withdrawn: Withdrawn[]
  /** Of any time. */
  withdrawnIds: ReadonlySet<string>
  /** Every void written in the span, whatever it withdraws. */
  voids: { id: string; at: string; by: string | null; reason: string | null; target: string }[]
  /** What lots cost by the deliveries up to the end of the span. */
  lots: LotPrices
  /** Each sump's charge and each meter's count just before the span. */
  memory: Translation
}

const atOnce = 2000
/** A reading reaches a week; the one before it is not needed. */
const daysBefore = 7
const dayMs = 86_400_000

/**
 * Reads what a span's figures come from, the span alone: what a ten-year book holds besides is not touched. Everything is of one moment: what arrives
 * meanwhile does not count.
 */
export async function readRecords({ journal, things }: BookParts, days: DaySpan): Promise<SpanRecords> {
  const history = await things()
  const { clock } = calendarOf(history)
  const span = spanOf(days, clock)
  const { seq, hash } = await journal.head()
  const arrived = (stored: StoredEntry) => stored.seq <= seq
  const voids = (await journal.entries({ kinds: ['void'], order: 'time' })).filter(arrived)
  const voided = voids.map((stored) => ({ stored, said: JSON.parse(stored.body) as EntryOf<'void'> }))
  const withdrawn = withdrawnBy(voided.map(({ stored, said }) => ({ id: stored.id, target: said.entry.toLowerCase() })))
  const last = new Date(span.before - 1).toISOString()
  const parts: SpanRecords = {
    span,
    head: { seq, hash },
    history,
    things: history.at(),
    clock,
    entries: [],
    before: [],
    withdrawn: [],
    withdrawnIds: withdrawn,
    voids: voided.filter(({ stored }) => isWithin(stored, span) && !withdrawn.has(stored.id)).map(sayVoid),
    lots: new Map(),
    memory: freshTranslation(),
  }
  const standingVoids = new Map(
    voided.filter(({ stored }) => !withdrawn.has(stored.id)).map((one) => [one.said.entry.toLowerCase(), sayVoid(one)]),
  )
  const query = { since: new Date(span.since - daysBefore * dayMs).toISOString(), until: last }
  for await (const page of pagesOf(journal, query)) {
    for (const stored of page.filter(arrived)) {
      const recorded = recordedOf(stored, clock)
      if (!isKnown(recorded.entry, parts.things)) continue
      if (withdrawn.has(stored.id)) {
        const by = standingVoids.get(stored.id)
        if (by !== undefined && isWithin(stored, span)) parts.withdrawn.push({ ...recorded, void: by })
      } else if (isWithin(stored, span)) parts.entries.push(recorded)
      else if (stored.kind === 'reading') parts.before.push(recorded)
    }
  }
  const standing = (stored: StoredEntry) => arrived(stored) && !withdrawn.has(stored.id)
  const deliveries = await lotPriceLog(journal)
  parts.lots = lotPricesOf(deliveries.filter(({ at }) => at <= last).map(({ kept }) => kept))
  await remember(journal, parts, standing)
  return parts
}

const sayVoid = ({ stored, said }: { stored: StoredEntry; said: EntryOf<'void'> }) => ({
  id: stored.id,
  at: stored.at,
  by: readEnvelope(stored.envelope)?.person ?? said.by ?? null,
  reason: said.reason ?? said.note ?? null,
  target: said.entry.toLowerCase(),
})

function recordedOf(stored: StoredEntry, clock: ShopClock): Recorded {
  const entry = JSON.parse(stored.body) as Entry
  const ms = Date.parse(stored.at)
  const by = readEnvelope(stored.envelope)?.person ?? entry.by ?? null
  return { id: stored.id, entry, at: stored.at, day: clock.at(ms), ms, by }
}

const isWithin = ({ at }: StoredEntry, { since, before }: Span) => {
  const ms = Date.parse(at)
  return ms >= since && ms < before
}

/** Entries of sumps the book does not know count nowhere yet. */
const isKnown = ({ sump }: Entry, things: Things) => typeof sump !== 'string' || things.sump.has(sump)

async function* pagesOf(journal: JournalReader, query: Omit<EntryQuery, 'order'>): AsyncGenerator<StoredEntry[]> {
  let last: StoredEntry | undefined
  do {
    const after = last === undefined ? {} : { after: { at: last.at, rank: last.rank, id: last.id } }
    const page: StoredEntry[] = await journal.entries({ ...query, order: 'time', limit: atOnce, ...after })
    yield page
    // Others get a turn: a long span must not hold up who writes.
    await nextTurn()
    last = page.length < atOnce ? undefined : page.at(-1)
  } while (last !== undefined)
}

/** What was in each sump, and what each meter of the span showed last, when the span began. */
async function remember(
  journal: JournalReader,
  { span, history, things, memory, entries }: SpanRecords,
  standing: (stored: StoredEntry) => boolean,
): Promise<void> {
  const until = new Date(span.since - 1).toISOString()
  const then = history.at(until)
  for (const sump of things.sump.values()) memory.sumps.set(sump.id, { spec: specOf(sump, things), charge: null })
  const charges = await journal.entries({ kinds: ['charge'], order: 'time', until })
  for (const stored of charges.filter(standing)) {
    rememberCharge(JSON.parse(stored.body) as EntryOf<'charge'>, then, memory)
  }
  const wanted = new Set(
    entries.flatMap(({ entry }) => (entry.kind === 'addition' && entry.meter !== undefined ? [entry.meter.id] : [])),
  )
  let last: StoredEntry | undefined
  while (wanted.size > 0) {
    const after = last === undefined ? {} : { after: { at: last.at, rank: last.rank, id: last.id } }
    const page: StoredEntry[] = await journal.entries({
      kinds: ['addition'],
      order: 'time-backwards',
      until,
      limit: atOnce,
      ...after,
    })
    for (const stored of page.filter(standing)) {
      const { meter } = JSON.parse(stored.body) as EntryOf<'addition'>
      const count = amountOf(meter?.count)
      if (meter === undefined || count === null || !wanted.delete(meter.id)) continue
      memory.meters.set(meter.id, count)
    }
    last = page.at(-1)
    if (page.length < atOnce) break
  }
}

/** The fluid that is in a sump, by the memory. */
export const fluidInSump = (sump: string, things: Things, memory: Translation): string => fluidIn(sump, things, memory)
