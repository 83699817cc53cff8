import { amountOf } from '../estimate/amounts.ts'
import type { Reading } from '../schema/entries/index.ts'
import type { JournalReader, StoredEntry } from '../store/store.ts'
import type { SpanRecords } from './records.ts'

/** Readings that are looked through for the last count before a span. */
const lookedThrough = 500

/**
 * How many hours the machines of each sump ran: the differences between one reading of the hour counter and the next, each counted at the later one. A
 * count that runs back was exchanged or set to zero: that difference is not known and counts nothing. A sump without two readings is not there.
 */
export async function readMachineHours(
  journal: JournalReader,
  { entries, span, withdrawnIds }: SpanRecords,
): Promise<Map<string, number>> {
  const counts = new Map<string, number[]>()
  for (const { entry } of entries) {
    if (entry.kind !== 'reading') continue
    const hours = amountOf(entry.machineHours)
    if (hours !== null) counts.set(entry.sump, [...(counts.get(entry.sump) ?? []), hours])
  }
  const ran = new Map<string, number>()
  for (const [sump, read] of counts) {
    const before = await lastCount(journal, sump, { until: new Date(span.since - 1).toISOString(), withdrawnIds })
    const all = before === null ? read : [before, ...read]
    if (all.length < 2) continue
    const steps = all.slice(1).map((hours, i) => Math.max(0, hours - all[i]!))
    ran.set(
      sump,
      steps.reduce((sum, hours) => sum + hours, 0),
    )
  }
  return ran
}

async function lastCount(
  journal: JournalReader,
  sump: string,
  { until, withdrawnIds }: { until: string; withdrawnIds: ReadonlySet<string> },
): Promise<number | null> {
  const read = await journal.entries({
    sump,
    kinds: ['reading'],
    order: 'time-backwards',
    until,
    limit: lookedThrough,
  })
  const hours = ({ id, body }: StoredEntry) =>
    withdrawnIds.has(id) ? null : amountOf((JSON.parse(body) as Reading).machineHours)
  return read.map(hours).find((count) => count !== null) ?? null
}
