import type { Reader } from '@sumpbook/fluid'
import { say } from '@sumpbook/fluid'
import { entryKinds } from '../schema/entries/index.ts'
import { keptThings } from '../setup/thing-cache.ts'
import type { JournalReader } from '../store/store.ts'
import { type JournalLine, lineOf, readWithdrawals } from './lines.ts'
import { storedOf } from './one-entry.ts'
import { isQuarantined } from './references.ts'

/** An entry that counts nowhere for now. */
export interface QuarantinedLine extends JournalLine {
  receivedAt: string
  /** Why. */
  why: string
  /**
   * What lets it in: a keeper's verdict `let in` (a void sets it aside), or the thing it is about becoming known, or a newer version.
   */
  waitsFor: 'keeper' | 'set-up' | 'newer version'
}

/** So many of the last to arrive are looked through: who finds the set-up still missing after them will not find it here. */
const lookedThrough = 100_000

/** Everything that was taken and counts nowhere for now, youngest arrival first. */
export async function quarantine(journal: JournalReader, reader: Partial<Reader> = {}): Promise<QuarantinedLine[]> {
  const [history, withdrawals, held] = await Promise.all([
    keptThings(journal),
    readWithdrawals(journal),
    journal.waitingHeld(),
  ])
  const now = history.at()
  const waiting = held.map((row) => ({
    ...lineOf(storedOf(row), now, withdrawals, reader),
    receivedAt: row.received_at,
    why: row.reason,
    waitsFor: 'keeper' as const,
  }))
  const { seq } = await journal.head()
  const known = { sumps: [...now.sump.keys()], kinds: entryKinds, after: seq - lookedThrough }
  const strangers = (await journal.entriesOfStrangers(known)).filter(
    ({ id, body }) => !withdrawals.withdrawn.has(id) && isStranger(JSON.parse(body), now),
  )
  const inJournal = strangers.map((stored) => {
    const isKnown = (entryKinds as readonly string[]).includes(stored.kind)
    return {
      ...lineOf(stored, now, withdrawals, reader),
      receivedAt: stored.receivedAt,
      why: isKnown
        ? say('what it is about is not known to this book yet')
        : say('this version knows no entry of kind "{kind}"', { kind: stored.kind }),
      waitsFor: isKnown ? ('set-up' as const) : ('newer version' as const),
    }
  })
  return [...waiting, ...inJournal].sort((a, b) => (a.receivedAt < b.receivedAt ? 1 : -1))
}

const isStranger = (body: { kind: string }, now: Parameters<typeof isQuarantined>[1]) =>
  !(entryKinds as readonly string[]).includes(body.kind) || isQuarantined(body, now)
