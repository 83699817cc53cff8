import type { BookParts } from '../book-parts.ts'
import type { Checkpoints } from '../estimate/checkpoints.ts'
import { mapInTurns } from '../in-turns.ts'
import type { Entry, EntryOf } from '../schema/entries/index.ts'
import type { JournalReader } from '../store/store.ts'
import type { Due } from './due.ts'
import { readDue } from './due-sources.ts'
import { lastReadings } from './last-readings.ts'
import { type SumpThen, sumpThen } from './sump-then.ts'

/** What was worked out of the moments at which shifts began; it goes by the records up to then alone. */
interface Remembered {
  seen: { seq: number; hash: string; things: string }
  /** By the instant, milliseconds. */
  starts: Map<number, { sumps: Map<string, SumpThen>; due: DueThen[] | null }>
}

/** What is remembered of a duty: no sentences, since the next one who asks may speak another language. */
export type DueThen = Pick<Due, 'key' | 'dueOn' | 'consequence' | 'exempt'>

/** So many moments are remembered: beginnings of shifts, and when sumps were written about in the one that runs. */
const mostRemembered = 400
/** A book's own, as long as it is open. */
const memories = new WeakMap<Checkpoints<never>, Remembered>()

/**
 * Sumps as they stood at a moment. Each is worked out once, as long as nothing arrives that is older.
 *
 * @param ids which sumps; all without it
 */
export async function sumpsThen(
  parts: BookParts,
  { ms, shiftDays, ids }: { ms: number; shiftDays: number; ids?: ReadonlySet<string> },
): Promise<ReadonlyMap<string, SumpThen>> {
  const { sumps } = await startOf(parts, ms)
  if (ids !== undefined && [...ids].every((id) => sumps.has(id))) return sumps
  const { standing, sumps: all } = await parts.checkpoints.standing(ms)
  const missing = all.filter(({ id }) => !sumps.has(id) && (ids === undefined || ids.has(id)))
  if (missing.length === 0) return sumps
  const until = new Date(ms).toISOString()
  const read = await lastReadings(parts.journal, await parts.things(), { sumps: missing, until })
  const then = await mapInTurns(missing, (one) => sumpThen(standing, one, read.get(one.id)!, shiftDays))
  for (const [i, { id }] of missing.entries()) sumps.set(id, then[i]!)
  return sumps
}

/** What else was due when a shift began. */
export async function dueThen(parts: BookParts, ms: number): Promise<readonly DueThen[]> {
  const start = await startOf(parts, ms)
  const at = new Date(ms)
  start.due ??= (await readDue(parts, { at, until: at, reader: {} })).map(({ key, dueOn, consequence, exempt }) => ({
    key,
    dueOn,
    consequence,
    exempt,
  }))
  return start.due
}

async function startOf(parts: BookParts, ms: number) {
  const { starts } = await memoryOf(parts)
  const known = starts.get(ms) ?? { sumps: new Map<string, SumpThen>(), due: null }
  // The one asked for last is the youngest of the map.
  starts.delete(ms)
  starts.set(ms, known)
  for (const oldest of starts.keys()) {
    if (starts.size <= mostRemembered) break
    starts.delete(oldest)
  }
  return known
}

/** Throws away what an entry has made untrue that arrived since. */
async function memoryOf({ journal, checkpoints }: BookParts): Promise<Remembered> {
  const { seq, hash, thingsSeal } = await journal.sealedHead()
  const seen = { seq, hash, things: thingsSeal }
  const known = memories.get(checkpoints as Checkpoints<never>)
  if (known === undefined) {
    const fresh: Remembered = { seen, starts: new Map() }
    memories.set(checkpoints as Checkpoints<never>, fresh)
    return fresh
  }
  if (known.seen.hash === hash && known.seen.things === seen.things) return known
  const earliest =
    known.seen.things === seen.things && seq >= known.seen.seq
      ? await earliestSince(journal, known.seen.seq)
      : Number.NEGATIVE_INFINITY
  for (const ms of known.starts.keys()) if (ms >= earliest) known.starts.delete(ms)
  known.seen = seen
  return known
}

/** The earliest instant at which something is other than it was, by what arrived after a place. */
async function earliestSince(journal: JournalReader, seq: number): Promise<number> {
  const arrived = await journal.entries({ order: 'arrival', after: { seq } })
  let earliest = Number.POSITIVE_INFINITY
  const targets: string[] = []
  for (const { at, kind, body } of arrived) {
    if (kind === 'void') targets.push((JSON.parse(body) as EntryOf<'void'>).entry.toLowerCase())
    else earliest = Math.min(earliest, Date.parse(at), kind === 'setup' ? setFrom(body) : Number.POSITIVE_INFINITY)
  }
  if (targets.length === 0) return earliest
  const stored = await journal.stored(targets)
  for (const { at, kind } of stored.values()) {
    // What a void of a void or of a set-up brings back may lie anywhere.
    earliest = Math.min(earliest, kind === 'void' || kind === 'setup' ? Number.NEGATIVE_INFINITY : Date.parse(at))
  }
  return earliest
}

/** A day begins up to 14 hours before it does in Greenwich. */
function setFrom(body: string): number {
  const entry = JSON.parse(body) as Entry
  if (entry.kind !== 'setup' || entry.from === undefined) return Number.POSITIVE_INFINITY
  return Date.parse(entry.from) - (entry.from.length === 10 ? 14 * 3_600_000 : 0)
}
