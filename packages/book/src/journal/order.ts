import type { Entry } from '../schema/entries/index.ts'

/**
 * The order of entries at one instant: what is set up, then charge, transfer in, reading, draw-off, skim and transfer
 * out, addition; then by id. A reading describes the sump as found, before what was done in that minute, but after a
 * fresh charge. The other sump of a transfer sees it at `transferInRank`.
 */
export function rankOf(kind: string): number {
  return ranks.get(kind) ?? readingRank
}

/** Where a transfer stands for the sump it goes into. */
export const transferInRank = 2
const readingRank = 3

/** A map: a kind that only a newer version knows may be called anything, `constructor` too. */
const ranks: ReadonlyMap<string, number> = new Map<Entry['kind'], number>([
  ['setup', 0],
  ['charge', 1],
  ['reading', readingRank],
  ['drawoff', 4],
  ['skim', 4],
  ['transfer', 4],
  ['addition', 5],
])

/** An instant as fixed-width UTC text, whose order as text is its order in time. */
export const utc = (instant: string): string => new Date(instant).toISOString()
