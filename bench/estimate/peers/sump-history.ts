import type { BenchBook, BenchEntry, BenchFluid, BenchSump, Value } from '../book.ts'

/** One sump's part of a book up to an instant, in the order of the journal. */
export interface SumpHistory {
  book: BenchBook
  sump: BenchSump
  entries: BenchEntry[]
  /** Litres at the mark, by the plate or as 0.8 of the brim. */
  mark: number
}

/** At one instant: charge, reading, what is taken, what is poured. */
const ranks: Record<string, number> = { charge: 0, reading: 2, drawoff: 3, skim: 3, transfer: 3, addition: 4 }
const rankOf = ({ kind }: BenchEntry) => ranks[kind] ?? 5

export function historyOf(book: BenchBook, sump: BenchSump, atMs: number): SumpHistory {
  const concerns = (entry: BenchEntry) => entry.sump === sump.id || destinationOf(entry) === sump.id
  const entries = book.entries
    .filter((entry) => concerns(entry) && Date.parse(entry.at) <= atMs)
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at) || rankOf(a) - rankOf(b))
  return { book, sump, entries, mark: sump.fillVolume ?? (sump.capacity ?? 250) / 1.25 }
}

export const destinationOf = ({ to }: BenchEntry): string | undefined => (typeof to === 'object' ? to.sump : to)

/** The product in the sump before `ms`: that of the last charge, else today's. */
export function fluidAt({ book, sump, entries }: SumpHistory, ms: number): BenchFluid {
  const charge = entries.findLast(
    ({ kind, at, fluid }) => kind === 'charge' && fluid !== undefined && Date.parse(at) <= ms,
  )
  const id = charge?.fluid ?? sump.fluid
  return book.fluids.find((fluid) => fluid.id === id)!
}

/** The water's hardness by its last analysis before `ms`, else as the book has it. */
export function waterHardness(book: BenchBook, id: string | undefined, ms: number): number {
  if (id === undefined) return 150
  const analysis = book.entries.findLast(
    ({ kind, about, at }) => kind === 'analysis' && about?.id === id && Date.parse(at) <= ms,
  )
  if (typeof analysis?.hardness === 'number') return analysis.hardness
  return book.waters.find((water) => water.id === id)?.hardness ?? 150
}

/** The litres of the plate that somebody saw, what runs in the lines put back; null where nobody looked. */
export function seenLitres({ sump, mark }: SumpHistory, entry: BenchEntry): number | null {
  const table = sump.dipTable
  const seen =
    entry.volume ??
    (entry.level !== undefined && table !== undefined ? (entry.level / table.at(-1)![0]) * table.at(-1)![1] : null)
  if (seen === null) return null
  return seen + (entry.pumps === 'running' ? (sump.holdUp ?? 0.12 * mark) : 0)
}

/** The middle of a class and the standard deviation of what lies evenly in it. */
export function middleOf(value: Value): { mean: number; sd: number } {
  if (typeof value === 'number') return { mean: value, sd: 0.1 * value }
  if ('below' in value) return { mean: value.below / 2, sd: value.below / Math.sqrt(12) }
  if ('atLeast' in value) return { mean: value.atLeast * 1.3, sd: value.atLeast * 0.3 }
  return { mean: (value.low + value.high) / 2, sd: (value.high - value.low) / Math.sqrt(12) }
}
