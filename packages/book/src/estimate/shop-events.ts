import type { ShopEvent } from '@sumpbook/fluid'
import { utc } from '../journal/order.ts'
import { receiverOf } from '../journal/receiver.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { ThingHistory, Things } from '../setup/things.ts'
import { amountOf, textOf } from './amounts.ts'
import type { Placed } from './placed.ts'
import { additionOf, chargeOf, rememberCharge } from './pour-events.ts'
import { readingOf } from './reading-events.ts'
import type { ShopClock } from './shop-clock.ts'
import { sameSpec, specOf } from './sump-spec.ts'
import type { Translation } from './translation.ts'
import { rememberAnalysis } from './water-poured.ts'

/** All that happened in one calendar day of the shop, in the order of the journal. */
export interface ShopDay {
  day: number
  events: ShopEvent[]
}

/** Days from one on, up to and without another. */
export interface Span {
  from: number
  before: number
}

/** What the reading of a journal needs beside its entries. */
export interface Reading {
  history: ThingHistory
  clock: ShopClock
  /** Goes along: at each day given it stands at that day's end. */
  memory: Translation
  span: Span
  /** Changes of things after this instant do not count, in milliseconds since 1970-01-01 UTC. */
  until?: number
  /** The sumps of entries that verdicts name. */
  sumpOf(entryId: string): string | undefined
}

/**
 * The standing entries of a journal as what happened in the shop, day by day: every figure in canonical units by the things of
 * its time, and every sump said again where it has become another. Entries of unknown sumps are passed over; odd ones say as
 * much as they can.
 *
 * @param batches entries in the order of the journal; those of other days are passed over
 */
export async function* shopDays(
  batches: AsyncIterable<readonly Placed[]> | Iterable<readonly Placed[]>,
  reading: Reading,
): AsyncGenerator<ShopDay> {
  const { history, clock, until = Number.POSITIVE_INFINITY } = reading
  const { from, before } = reading.span
  const isWanted = (at: number) => Math.floor(at) >= from && Math.floor(at) < before
  const changes = history.changes
    .map((text) => ({ text, ms: Date.parse(text), at: clock.at(Date.parse(text)) }))
    .filter(({ ms, at }) => isWanted(at) && ms <= until)
  let things: Things | null = null
  let open: ShopDay = { day: Number.NEGATIVE_INFINITY, events: [] }
  let next = 0
  for await (const batch of batches) {
    for (const placed of batch) {
      if (!isWanted(placed.at)) continue
      for (let change = changes[next]; change !== undefined && change.ms <= placed.ms; change = changes[++next]) {
        if (Math.floor(change.at) !== open.day) {
          if (open.events.length > 0) yield open
          open = { day: Math.floor(change.at), events: [] }
        }
        things = history.at(change.text)
        sayChanges(open.events, change.at, things, reading.memory)
      }
      if (Math.floor(placed.at) !== open.day) {
        if (open.events.length > 0) yield open
        open = { day: Math.floor(placed.at), events: [] }
      }
      things ??= history.at(utc(placed.entry.at))
      sayEntry(open.events, placed, things, reading)
    }
  }
  for (let change = changes[next]; change !== undefined; change = changes[++next]) {
    if (Math.floor(change.at) !== open.day) {
      if (open.events.length > 0) yield open
      open = { day: Math.floor(change.at), events: [] }
    }
    sayChanges(open.events, change.at, history.at(change.text), reading.memory)
  }
  if (open.events.length > 0) yield open
}

/** Sumps that are other from here on. */
function sayChanges(events: ShopEvent[], at: number, things: Things, { sumps }: Translation): void {
  for (const [id, memory] of sumps) {
    const sump = things.sump.get(id)
    if (sump === undefined) continue
    const spec = specOf(sump, things)
    if (sameSpec(spec, memory.spec)) continue
    memory.spec = spec
    events.push({ kind: 'setup', id: '', at, sump: id, spec })
  }
}

/** Whether the book knows the sump; at its first event it is said what it is like. */
export function introduce(
  events: ShopEvent[],
  sump: string,
  { id, at }: Pick<Placed, 'id' | 'at'>,
  things: Things,
  { sumps }: Translation,
): boolean {
  if (sumps.has(sump)) return true
  const known = things.sump.get(sump)
  if (known === undefined) return false
  const spec = specOf(known, things)
  sumps.set(sump, { spec, charge: null })
  events.push({ kind: 'setup', id, at, sump, spec })
  return true
}

function sayEntry(events: ShopEvent[], placed: Placed, things: Things, { memory, clock, sumpOf }: Reading): void {
  const { entry } = placed
  if (entry.kind === 'analysis') rememberAnalysis(entry, things, memory)
  const told = entry.kind === 'verdict' ? verdictsOf(entry, placed, sumpOf) : toldBy(placed, { things, memory, clock })
  for (const event of told) {
    if (!introduce(events, event.sump, placed, things, memory)) continue
    if (event.kind === 'transfer' && event.to !== null) introduce(events, event.to, placed, things, memory)
    events.push(event)
  }
  if (entry.kind === 'charge') rememberCharge(entry, things, memory)
}

/** What an entry says of one sump's balance; nothing where it says nothing of it, or of a sump the book does not know. */
function toldBy(placed: Placed, { things, memory, clock }: Pick<Reading, 'memory' | 'clock'> & { things: Things }) {
  const { entry, id, at } = placed
  const { sump } = entry
  if (typeof sump !== 'string' || !things.sump.has(sump)) return []
  const of = { id, at, sump }
  const told: (ShopEvent | null)[] = []
  switch (entry.kind) {
    case 'charge':
      told.push(chargeOf(entry, placed, things, memory))
      break
    case 'addition':
      told.push(additionOf(entry, placed, things, memory))
      break
    case 'reading': {
      const hours = amountOf(entry.machineHours)
      told.push(readingOf(entry, placed, things, memory), hours === null ? null : { ...of, kind: 'hours', hours })
      break
    }
    case 'drawoff':
      told.push({ ...of, kind: 'drawoff', volume: amountOf(entry.volume) })
      break
    case 'transfer': {
      const to = receiverOf(entry)
      const known = to !== null && to !== sump && things.sump.has(to) ? to : null
      told.push({ ...of, kind: 'transfer', volume: amountOf(entry.volume), to: known })
      break
    }
    case 'skim':
    case 'job':
    case 'cleanout':
      told.push({ ...of, kind: entry.kind })
      break
    case 'idle':
      told.push(idleOf(entry, of, clock))
      break
  }
  return told.filter((event) => event !== null)
}

/** From when until when a machine stood; without an end it stood until it was written down, without a beginning from then. */
function idleOf(
  entry: EntryOf<'idle'>,
  of: { id: string; at: number; sump: string },
  clock: ShopClock,
): ShopEvent | null {
  const from = Date.parse(textOf(entry.from) ?? entry.at)
  const until = Date.parse(textOf(entry.to) ?? entry.at)
  return from < until ? { ...of, kind: 'idle', from: clock.at(from), until: clock.at(until) } : null
}

/** One event for each sump that the doubt concerns: an instrument's doubt concerns several. */
function verdictsOf(entry: EntryOf<'verdict'>, { id, at }: Placed, sumpOf: Reading['sumpOf']): ShopEvent[] {
  const entries = (entry.entries ?? []).map((named) => named.toLowerCase())
  const answer = textOf(entry.answer)
  if (answer === null || entries.length === 0) return []
  const sumps = new Set<string>(typeof entry.sump === 'string' ? [entry.sump] : [])
  for (const named of entries) {
    const sump = sumpOf(named)
    if (sump !== undefined) sumps.add(sump)
  }
  return [...sumps].map((sump) => ({ kind: 'verdict', id, at, sump, entries, answer }))
}
