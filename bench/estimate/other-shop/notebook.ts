import type { BenchEntry } from '../book.ts'
import type { Labels, MissingRecord } from '../simulate/labels.ts'
import type { Chance } from '../simulate/random.ts'

/** What people wrote, and beside it what only the simulator knows. */
export interface Notebook {
  entries: BenchEntry[]
  labels: Labels
  write(atMs: number, fields: Omit<BenchEntry, 'id' | 'at'>): BenchEntry
  /** Something was done and nobody wrote it. */
  leaveOut(missing: MissingRecord): void
}

export function openNotebook(chance: Chance): Notebook {
  const entries: BenchEntry[] = []
  const labels: Labels = { wrongReadings: [], missing: [], instrumentsOff: [] }
  return {
    entries,
    labels,
    write(atMs, fields) {
      const entry = { id: timedId(atMs, chance), at: new Date(atMs).toISOString(), ...fields } as BenchEntry
      entries.push(entry)
      return entry
    },
    leaveOut: (missing) => labels.missing.push(missing),
  }
}

/** An id of version 7: 48 bits of time, then chance (RFC 9562 §5.7). */
function timedId(atMs: number, chance: Chance): string {
  const random = (digits: number) =>
    Math.floor(chance.unit() * 16 ** digits)
      .toString(16)
      .padStart(digits, '0')
  const time = atMs.toString(16).padStart(12, '0')
  return `${time.slice(0, 8)}-${time.slice(8)}-7${random(3)}-a${random(3)}-${random(12)}`
}
