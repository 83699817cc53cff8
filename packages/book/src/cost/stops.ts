import type { Recorded } from './records.ts'

/** Entries at one sump no further apart than this are one stop (common practice, no source). */
export const stopMinutes = 20

/** Kinds that somebody enters standing at a sump. */
const atTheSump: ReadonlySet<string> = new Set([
  'reading',
  'addition',
  'drawoff',
  'transfer',
  'skim',
  'observation',
  'skip',
  'upkeep',
])

/** One visit of a sump. */
export interface Stop {
  sump: string
  day: number
  at: string
}

/** How often somebody stood at each sump. A result that is read later belongs to no stop, nor do charges and cleanouts, which have hours of their own. */
export function stopsOf(entries: readonly Recorded[]): Stop[] {
  const last = new Map<string, number>()
  const stops: Stop[] = []
  for (const { entry, ms, day, at } of entries) {
    if (typeof entry.sump !== 'string' || !atTheSump.has(entry.kind)) continue
    if (entry.kind === 'reading' && entry.answers !== undefined) continue
    const before = last.get(entry.sump)
    last.set(entry.sump, ms)
    if (before === undefined || ms - before > stopMinutes * 60_000) stops.push({ sump: entry.sump, day, at })
  }
  return stops
}
