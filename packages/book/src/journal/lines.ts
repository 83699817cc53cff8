import { type Figure, quantile95, type Reader, unitsHere } from '@sumpbook/fluid'
import { BookError } from '../errors.ts'
import type { Entry } from '../schema/entries/index.ts'
import type { Value } from '../schema/values.ts'
import { keptThings } from '../setup/thing-cache.ts'
import type { Things } from '../setup/things.ts'
import type { JournalReader, StoredEntry } from '../store/store.ts'
import { strengthRead } from '../today/strength-read.ts'
import { readEnvelope } from './envelope.ts'
import { utc } from './order.ts'
import { sayEntry } from './say-entry.ts'
import { withdrawnBy } from './withdrawn.ts'

/** One line of the journal. */
export interface JournalLine {
  id: string
  at: string
  kind: string
  sump: string | null
  /** The person who was signed in, by id; else as the entry says. */
  by: string | null
  text: string
  withdrawn: boolean
  /** Why it was withdrawn, where somebody said. */
  reason: string | null
}

/** One entry of a sump's history, with the strength it read. */
export interface HistoryLine extends JournalLine {
  entry: string
  concentration: Omit<Figure, 'sd'> | null
  ph: number | null
  hardness: number | null
  /** The class of a strip; an end that it does not have is null. */
  hardnessClass: { low: number | null; high: number | null } | null
}

/**
 * A sump's whole history, oldest first, withdrawn entries included and marked.
 *
 * @throws {BookError} `not-found`
 */
export async function sumpHistory(
  journal: JournalReader,
  sump: string,
  reader: Partial<Reader> = {},
): Promise<HistoryLine[]> {
  const [history, entries, withdrawals] = await Promise.all([
    keptThings(journal),
    journal.entries({ order: 'time', sump }),
    readWithdrawals(journal),
  ])
  const now = history.at()
  if (!now.sump.has(sump)) throw new BookError('not-found', `This book has no sump "${sump}".`)
  let [fluid, lot] = [now.sump.get(sump)!.fluid, null as string | null]
  return entries.map((stored) => {
    const line = lineOf(stored, now, withdrawals, reader)
    const entry = JSON.parse(stored.body) as Entry
    if (entry.kind === 'charge' && !line.withdrawn) [fluid, lot] = [entry.fluid ?? fluid, entry.lot ?? null]
    const then = history.at(utc(stored.at))
    const strength = entry.kind === 'reading' ? strengthRead(entry, then.fluid.get(fluid), then, lot) : null
    return {
      ...line,
      entry: stored.id,
      concentration: strength === null ? null : intervalOf(strength),
      ph: entry.kind === 'reading' && typeof entry.ph === 'number' ? entry.ph : null,
      hardness: entry.kind === 'reading' && typeof entry.hardness === 'number' ? entry.hardness : null,
      hardnessClass: entry.kind === 'reading' ? classOf(entry.hardness) : null,
    }
  })
}

export interface Withdrawals {
  withdrawn: ReadonlySet<string>
  reasons: ReadonlyMap<string, string>
}

/** What is withdrawn, and why. */
export async function readWithdrawals(journal: JournalReader): Promise<Withdrawals> {
  const entries = await journal.entries({ kinds: ['void'], order: 'time' })
  const voids = entries.map(({ id, body }) => ({
    id,
    ...(JSON.parse(body) as { entry: string; reason?: string; note?: string }),
  }))
  const withdrawn = withdrawnBy(voids.map(({ id, entry }) => ({ id, target: entry.toLowerCase() })))
  const reasons = voids
    .filter(({ id }) => !withdrawn.has(id))
    .flatMap(({ entry, reason, note }) => {
      const said = reason ?? note
      return said === undefined ? [] : [[entry.toLowerCase(), said] as const]
    })
  return { withdrawn, reasons: new Map(reasons) }
}

/** An entry as a line. */
export function lineOf(
  stored: StoredEntry,
  now: Things,
  { withdrawn, reasons }: Withdrawals,
  reader: Partial<Reader>,
): JournalLine {
  const entry = JSON.parse(stored.body) as Entry
  return {
    id: stored.id,
    at: stored.at,
    kind: stored.kind,
    sump: stored.sump,
    by: readEnvelope(stored.envelope)?.person ?? entry.by ?? null,
    text: sayEntry(entry, now, { units: unitsHere(now.shop), ...reader }) ?? stored.kind,
    withdrawn: withdrawn.has(stored.id),
    reason: reasons.get(stored.id) ?? null,
  }
}

function classOf(value: Value | undefined): HistoryLine['hardnessClass'] {
  if (value === undefined || typeof value === 'number') return null
  if ('low' in value) return { low: value.low, high: value.high }
  return 'below' in value ? { low: null, high: value.below } : { low: value.atLeast, high: null }
}

const intervalOf = ({ mean, sd }: { mean: number; sd: number }) => ({
  mean,
  low90: Math.max(0, mean - quantile95 * sd),
  high90: mean + quantile95 * sd,
})
