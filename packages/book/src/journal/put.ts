import { BookError, type Fault, refusal } from '../errors.ts'
import { type Entry, entry, entryKinds, unknownEntry } from '../schema/entries/index.ts'
import { faultsOf } from '../schema/faults.ts'
import { unknownFields } from '../schema/unknown-fields.ts'
import { halfCharacters } from '../schema/whole-text.ts'
import { brimFaults } from '../setup/brim.ts'
import { setupFaults } from '../setup/check.ts'
import type { ThingHistory } from '../setup/things.ts'
import type { Store } from '../store/store.ts'
import { arriving } from './arriving.ts'
import { canonicalJson } from './canonical.ts'
import { utc } from './order.ts'
import { isQuarantined } from './references.ts'

/** What became of one entry. */
export interface Arrival {
  id: string
  /** `added`; `same` where this very entry was there already; `conflict` where another stands under its id; `refused`. */
  status: 'added' | 'same' | 'conflict' | 'refused'
  /** Why it counts nowhere for now; null where it counts. */
  quarantine: string | null
  warnings: string[]
  faults: Fault[]
  /** Whether the person may confirm what is implausible (the fields' pointers in `confirmed`). */
  confirmable: boolean
}

/** A clock may run ahead of ours by this much before its time is questioned. */
export const clockToleranceMs = 5 * 60_000

/**
 * Takes entries into the journal, each exactly once: the same entry again changes nothing. Each is judged by itself;
 * those that pass are written in one durable transaction, in the order given.
 *
 * @param now the server's clock, to question a time in the future
 * @param history the things of the shop, for what only they can tell (a level above the brim)
 */
export async function putEntries(
  store: Store,
  sent: readonly unknown[],
  now: Date,
  history: ThingHistory,
): Promise<Arrival[]> {
  const judged = await Promise.all(sent.map((body) => takenBefore(store, body, judge(body, history, now))))
  if (judged.every(({ entry: accepted }) => accepted === null)) return judged.map(({ arrival }) => arrival)
  return store.write(async (journal) => {
    const accepted = judged.flatMap(({ entry: body }) => (body === null ? [] : [arriving(body)]))
    const standing = await journal.bodies(accepted.map(({ id }) => id))
    const fresh = accepted.filter(({ id, body }) => {
      if (standing.has(id)) return false
      standing.set(id, body)
      return true
    })
    await journal.append(fresh, now.toISOString())
    const added = new Set(fresh.map(({ id }) => id))
    return judged.map(({ entry: body, arrival }) => {
      if (body === null) return arrival
      const id = body.id.toLowerCase()
      if (added.delete(id)) return arrival
      return { ...arrival, status: standing.get(id) === canonicalJson(body) ? 'same' : 'conflict' }
    })
  })
}

/**
 * What the book has taken once it never refuses later, whatever its things have become since: a device that did not hear the
 * first answer asks again.
 */
async function takenBefore(store: Store, sent: unknown, judged: Judged): Promise<Judged> {
  const { arrival } = judged
  if (arrival.status !== 'refused' || arrival.id === '') return judged
  const standing = (await store.bodies([arrival.id])).get(arrival.id)
  if (standing === undefined || standing !== canonicalJson(sent)) return judged
  return { entry: null, arrival: { ...arrival, status: 'same', faults: [], confirmable: false } }
}

/** @throws {BookError} where the entry did not get in */
export function orThrow(arrival: Arrival): Arrival {
  if (arrival.status === 'refused') throw refusal(arrival.faults, 'entry')
  if (arrival.status === 'conflict') {
    throw new BookError('other-entry-under-id', `Another entry stands under ${arrival.id}; nothing was changed.`)
  }
  return arrival
}

interface Judged {
  entry: { id: string; at: string; kind: string } | null
  arrival: Arrival
}

function judge(sent: unknown, history: ThingHistory, now: Date): Judged {
  const known = isKnownKind(sent)
  const parsed = known ? entry.safeParse(sent) : unknownEntry.safeParse(sent)
  if (!parsed.success) return refused(sent, faultsOf(parsed.error, sent))
  const halves = halfCharacters(sent)
  if (halves.length > 0) return refused(sent, halves)
  const body = sent as Entry
  const future = futureFaults(body, now)
  const faults = [...future, ...(known ? factFaults(body, history) : [])]
  if (faults.length > 0) return refused(sent, faults, faults.length === future.length)
  const quarantine = known ? quarantineOf(body, history) : `this version knows no entry of kind "${body.kind}"`
  const warnings = known
    ? unknownFields(entry, body).map((pointer) => `${pointer} is not a field of this version; it is kept.`)
    : []
  return {
    entry: body,
    arrival: { id: body.id.toLowerCase(), status: 'added', quarantine, warnings, faults: [], confirmable: false },
  }
}

const isKnownKind = (sent: unknown) => {
  const kind = (sent as { kind?: unknown } | null)?.kind
  return typeof kind !== 'string' || (entryKinds as readonly string[]).includes(kind)
}

function refused(sent: unknown, faults: Fault[], confirmable = false): Judged {
  const id = (sent as { id?: unknown } | null)?.id
  const arrival: Arrival = {
    id: typeof id === 'string' ? id.toLowerCase() : '',
    status: 'refused',
    quarantine: null,
    warnings: [],
    faults,
    confirmable,
  }
  return { entry: null, arrival }
}

function futureFaults({ at, confirmed = [] }: Pick<Entry, 'at' | 'confirmed'>, now: Date): Fault[] {
  if (Date.parse(at) <= now.getTime() + clockToleranceMs || confirmed.includes('/at')) return []
  return [{ pointer: '/at', found: at, expected: `a time not after now, ${now.toISOString()}` }]
}

function factFaults(body: Entry, history: ThingHistory): Fault[] {
  if (body.kind === 'setup') return setupFaults(body, history)
  if (body.kind !== 'reading') return []
  const sump = history.at(utc(body.at)).sump.get(body.sump)
  return sump === undefined ? [] : brimFaults(body, sump)
}

function quarantineOf(body: Entry, history: ThingHistory): string | null {
  if (!isQuarantined(body, history.at())) return null
  const name = body.sump ?? (body.about as { id?: string } | undefined)?.id ?? ''
  return `this book does not know ${body.sump === undefined ? '' : 'the sump '}"${name}" yet`
}
