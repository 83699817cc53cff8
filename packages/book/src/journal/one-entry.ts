import type { Reader } from '@sumpbook/fluid'
import { say } from '@sumpbook/fluid'
import { BookError } from '../errors.ts'
import type { Entry } from '../schema/entries/index.ts'
import { keptThings } from '../setup/thing-cache.ts'
import type { JournalReader, StoredEntry } from '../store/store.ts'
import type { HeldRow } from '../store/tables.ts'
import { arriving } from './arriving.ts'
import { type Envelope, readEnvelope } from './envelope.ts'
import { type JournalLine, lineOf, readWithdrawals } from './lines.ts'
import { isQuarantined } from './references.ts'

/** Everything there is to know of one entry. */
export interface EntryPage extends JournalLine {
  /** Its place in the order of arrival and its hash; null while it is held. */
  seq: number | null
  hash: string | null
  /** When it reached the server, by the server's clock. */
  receivedAt: string
  /** What the server knows of how it came. */
  envelope: Envelope | null
  /** When it was written down, by a clock that is right: the device's time less what the device was ahead. */
  writtenAt: string | null
  /** What the device sent, to the letter. */
  entry: Entry
  /** Why it counts nowhere for now; null where it counts. */
  quarantine: string | null
  /** The voids that name it. */
  voids: { id: string; at: string; by: string | null; reason: string | null }[]
}

/**
 * One entry with its envelope and the voids that name it.
 *
 * @throws {BookError} `not-found`
 */
export async function entryPage(journal: JournalReader, id: string, reader: Partial<Reader> = {}): Promise<EntryPage> {
  const wanted = id.toLowerCase()
  const there = (await journal.stored([wanted])).get(wanted)
  const held = (await journal.held([wanted])).get(wanted)
  const stored = there ?? (held === undefined ? null : storedOf(held))
  if (stored === null) throw new BookError('not-found', `This book has no entry ${id}.`)
  const [history, withdrawals, voids] = await Promise.all([
    keptThings(journal),
    readWithdrawals(journal),
    journal.entries({ kinds: ['void'], order: 'time' }),
  ])
  const now = history.at()
  const entry = JSON.parse(stored.body) as Entry
  const envelope = readEnvelope(stored.envelope)
  const isHeld = there === undefined
  return {
    ...lineOf(stored, now, withdrawals, reader),
    seq: isHeld ? null : stored.seq,
    hash: isHeld ? null : stored.hash,
    receivedAt: stored.receivedAt,
    envelope,
    writtenAt: writtenAt(entry, envelope),
    entry,
    quarantine: isHeld
      ? sayHeld(held!)
      : isQuarantined(entry, now)
        ? say('its subject is not known to this book yet')
        : null,
    voids: voids
      .map((one) => ({ stored: one, said: JSON.parse(one.body) as Entry & { entry: string; reason?: string } }))
      .filter(({ said }) => said.entry.toLowerCase() === wanted)
      .map(({ stored: one, said }) => ({
        id: one.id,
        at: one.at,
        by: readEnvelope(one.envelope)?.person ?? said.by ?? null,
        reason: said.reason ?? said.note ?? null,
      })),
  }
}

const sayHeld = ({ reason, answer }: HeldRow) =>
  answer === null ? reason : say('{reason}; it was {answer}', { reason, answer })

/** An entry that is held, as the journal would show it. */
export function storedOf({ body, envelope, received_at: receivedAt }: HeldRow): StoredEntry {
  return { ...arriving(JSON.parse(body)), seq: 0, hash: '', receivedAt, envelope }
}

function writtenAt({ recordedAt, at }: Entry, envelope: Envelope | null): string | null {
  const written = Date.parse(recordedAt ?? at)
  return new Date(written - (envelope?.clockAheadMs ?? 0)).toISOString()
}
