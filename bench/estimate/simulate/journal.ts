import type { BenchEntry } from '../book.ts'
import type { ShopClock } from './clock.ts'
import type { Labels } from './labels.ts'
import type { Chance } from './random.ts'
import { timeText } from './sump.ts'

/** What gets written down, and what the simulator knows of it. */
export interface Journal {
  entries: BenchEntry[]
  labels: Labels
  write(step: number, minute: number, fields: Omit<BenchEntry, 'id' | 'at'>): BenchEntry
}

export function openJournal(clock: ShopClock, chance: Chance): Journal {
  const entries: BenchEntry[] = []
  const hex = (length: number) => Array.from({ length }, () => Math.floor(chance.unit() * 16).toString(16)).join('')
  return {
    entries,
    labels: { wrongReadings: [], missing: [], instrumentsOff: [] },
    write(step, minute, fields) {
      const count = entries.length.toString(16).padStart(8, '0')
      const id = `${count}-${hex(4)}-4${hex(3)}-8${hex(3)}-${hex(12)}`
      const entry = { id, at: timeText(clock, step, minute), ...fields } as BenchEntry
      entries.push(entry)
      return entry
    },
  }
}
