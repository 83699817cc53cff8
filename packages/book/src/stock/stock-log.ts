import { amountOf, percentOf, textOf } from '../estimate/amounts.ts'
import { entryLog } from '../journal/entry-log.ts'
import type { Entry, EntryOf } from '../schema/entries/index.ts'

/** What the stock needs of an entry. */
export type StockEntry =
  | {
      kind: 'receipt'
      fluid: string
      lot: string | null
      litres: number | null
      made: string | null
      opened: string | null
      seal: 'whole' | 'broken' | null
    }
  | { kind: 'issue'; fluid: string; lot: string | null; litres: number | null }
  | { kind: 'count'; fluid: string; lot: string | null; litres: number }
  | { kind: 'order'; fluid: string; litres: number | null; expectedOn: string | null }
  | Poured

/** What was poured into a sump, as far as concentrate goes. */
export interface Poured {
  kind: 'pour'
  sump: string
  isCharge: boolean
  /** Null: the sump's own. */
  fluid: string | null
  lot: string | null
  /** Litres of mix; null where they were not measured. */
  volume: number | null
  /** Percent; null where nobody said. */
  strength: number | null
  /** Litres of concentrate, where they were told. */
  concentrate: number | null
  /** The count of a meter through which it ran. */
  meter: { id: string; count: number } | null
  /** Whether anything was poured that may hold concentrate. */
  isMix: boolean
}

/** What came, went out, was counted and ordered: little, and asked for with every list of the day. */
export const stockLog = entryLog<StockEntry>(['receipt', 'issue', 'check', 'order'], stockEntry)
/** What was poured: much, and only asked for where it counts. */
export const pourLog = entryLog<StockEntry>(['charge', 'addition'], stockEntry)

function stockEntry(entry: Entry): StockEntry | null {
  switch (entry.kind) {
    case 'receipt': {
      const { made, opened, seal } = entry
      const fluid = fluidOf(entry)
      if (fluid === null) return null
      return {
        kind: 'receipt',
        fluid,
        lot: textOf(entry.lot),
        litres: amountOf(entry.litres),
        made: textOf(made),
        opened: textOf(opened),
        seal: seal === 'whole' || seal === 'broken' ? seal : null,
      }
    }
    case 'issue': {
      const fluid = fluidOf(entry)
      return fluid === null ? null : { kind: 'issue', fluid, lot: textOf(entry.lot), litres: amountOf(entry.litres) }
    }
    case 'order': {
      const fluid = fluidOf(entry)
      if (fluid === null) return null
      return { kind: 'order', fluid, litres: amountOf(entry.litres), expectedOn: textOf(entry.expectedOn) }
    }
    case 'check': {
      const [litres, { kind, id }] = [amountOf(entry.found), entry.about]
      if (kind !== 'stock' || litres === null || id === undefined) return null
      return { kind: 'count', fluid: id, lot: textOf(entry.lot), litres }
    }
    case 'charge':
    case 'addition':
      return poured(entry)
    default:
      return null
  }
}

/** The fluid that was named, else the one whose stock it is. */
const fluidOf = ({ fluid, about }: EntryOf<'receipt'> | EntryOf<'issue'> | EntryOf<'order'>): string | null =>
  textOf(fluid) ?? (about.kind === 'stock' ? textOf(about.id) : null)

function poured(entry: EntryOf<'charge'> | EntryOf<'addition'>): Poured {
  const isCharge = entry.kind === 'charge'
  const meter = entry.kind === 'addition' ? entry.meter : undefined
  const count = amountOf(meter?.count)
  const concentrate = entry.kind === 'addition' ? amountOf(entry.concentrate) : null
  const volume = amountOf(entry.volume)
  const isAdditive = entry.kind === 'addition' && entry.additive !== undefined
  const toMark = entry.kind === 'addition' && entry.toMark === true
  return {
    kind: 'pour',
    sump: entry.sump,
    isCharge,
    fluid: textOf(entry.fluid),
    lot: textOf(entry.lot),
    volume,
    strength: percentOf(entry.strength),
    concentrate,
    meter: meter === undefined || count === null ? null : { id: meter.id, count },
    isMix: volume !== null || concentrate !== null || toMark || !isAdditive,
  }
}
