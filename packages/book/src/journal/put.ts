import { BookError, type Fault, refusal } from '../errors.ts'
import { type Entry, entry, entryKinds, unknownEntry } from '../schema/entries/index.ts'
import { faultsOf } from '../schema/faults.ts'
import { unknownFields } from '../schema/unknown-fields.ts'
import { withoutCanonicalForm } from '../schema/whole-text.ts'
import { brimFaults } from '../setup/brim.ts'
import { setupFaults } from '../setup/check.ts'
import type { ThingHistory } from '../setup/things.ts'
import type { ArrivingEntry, JournalWriter, Store } from '../store/store.ts'
import type { HeldRow } from '../store/tables.ts'
import { arriving } from './arriving.ts'
import { canonicalJson } from './canonical.ts'
import { type Envelope, envelopeText } from './envelope.ts'
import { utc } from './order.ts'
import { isQuarantined } from './references.ts'

/** The answer of a verdict that lets entries in which a keeper had to look at first. */
export const letIn = 'let in'

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
 * those that pass are written in one durable transaction, in the order given. What is to be held waits outside the journal.
 *
 * @param now the server's clock, to question a time in the future
 * @param history the things of the shop, for what only they can tell (a level above the brim)
 * @param notes how each of them came, where the server knows more than the entry says
 */
export async function putEntries(
  store: Store,
  sent: readonly unknown[],
  now: Date,
  history: ThingHistory,
  notes: readonly ArrivalNote[] = [],
): Promise<Arrival[]> {
  const judged = await Promise.all(
    sent.map(async (body, n) => {
      const note = notes[n] ?? noNote
      return { ...(await takenBefore(store, body, judge(body, history, clockOfDevice(now, note)))), note }
    }),
  )
  if (judged.every(({ entry: accepted }) => accepted === null)) return judged.map(({ arrival }) => arrival)
  const receivedAt = now.toISOString()
  return store.write(async (journal) => {
    const accepted = judged.flatMap(({ entry: body, note }) =>
      body === null ? [] : [{ ...arriving(body), envelope: envelopeText(note.envelope), hold: note.hold }],
    )
    const ids = accepted.map(({ id }) => id)
    const held = await journal.held(ids)
    const standing = new Map([...held].map(([id, { body }]) => [id, body]))
    for (const [id, body] of await journal.bodies(ids)) standing.set(id, body)
    const fresh = accepted.filter(({ id, body }) => {
      if (standing.has(id)) return false
      standing.set(id, body)
      return true
    })
    const taken = fresh.filter(({ hold }) => hold === null)
    await journal.append(taken, receivedAt)
    await journal.holdBack(
      fresh.flatMap((entry) => (entry.hold === null ? [] : [heldRow(entry, entry.hold, receivedAt)])),
    )
    await answerHeld(journal, taken, receivedAt)
    const added = new Set(fresh.map(({ id }) => id))
    return judged.map(({ entry: body, arrival, note }) => {
      if (body === null) return arrival
      const id = body.id.toLowerCase()
      if (added.delete(id)) return { ...arrival, quarantine: note.hold ?? arrival.quarantine }
      const quarantine = waiting(held.get(id)) ?? arrival.quarantine
      return { ...arrival, quarantine, status: standing.get(id) === canonicalJson(body) ? 'same' : 'conflict' }
    })
  })
}

/** What a server knows of how an entry came, beside what the entry says. */
export interface ArrivalNote {
  /** Kept with the entry, outside its body; null where nothing is known. */
  envelope: Envelope | null
  /** Why a keeper must look at it before it counts; null where nobody must. */
  hold: string | null
}

/** An entry that came as it came. */
export const noNote: ArrivalNote = { envelope: null, hold: null }

/** A clock that runs ahead is no reason to question what its owner saw just now: it is judged by the time it shows. */
const clockOfDevice = (now: Date, { envelope }: ArrivalNote) =>
  new Date(now.getTime() + Math.max(0, envelope?.clockAheadMs ?? 0))

const waiting = (held: HeldRow | undefined): string | null =>
  held === undefined || held.answer !== null ? null : held.reason

function heldRow({ id, body, envelope }: ArrivingEntry, reason: string, receivedAt: string): HeldRow {
  return {
    id,
    body,
    envelope: envelope ?? '{}',
    received_at: receivedAt,
    reason,
    answered_by: null,
    answer: null,
  }
}

/** A verdict "let in" brings entries that are held into the journal, with the envelope they came in; a void sets them aside. */
async function answerHeld(journal: JournalWriter, fresh: readonly ArrivingEntry[], receivedAt: string): Promise<void> {
  for (const { id, kind, body } of fresh) {
    if (kind !== 'verdict' && kind !== 'void') continue
    const said = JSON.parse(body) as { entry?: string; entries?: string[]; answer?: string }
    if (kind === 'verdict' && said.answer !== letIn) continue
    const named = kind === 'void' ? [said.entry!] : (said.entries ?? [])
    const rows = await journal.held(named.map((one) => one.toLowerCase()))
    for (const row of [...rows.values()].filter(({ answer }) => answer === null)) {
      await journal.answerHeld(row.id, { entry: id, answer: kind === 'void' ? 'set aside' : letIn })
      if (kind === 'void') continue
      const envelope = { ...(JSON.parse(row.envelope) as Envelope), heldSince: row.received_at }
      await journal.append([{ ...arriving(JSON.parse(row.body)), envelope: envelopeText(envelope) }], receivedAt)
    }
  }
}

/**
 * What the book has taken once it never refuses later, whatever its things have become since: a device that did not hear the
 * first answer asks again.
 */
async function takenBefore(store: Store, sent: unknown, judged: Judged): Promise<Judged> {
  const { arrival } = judged
  if (arrival.status !== 'refused' || arrival.id === '') return judged
  const standing =
    (await store.bodies([arrival.id])).get(arrival.id) ?? (await store.held([arrival.id])).get(arrival.id)?.body
  // What has no canonical form cannot have been taken.
  if (standing === undefined || withoutCanonicalForm(sent).length > 0 || standing !== canonicalJson(sent)) return judged
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
  const halves = withoutCanonicalForm(sent)
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
