import type { Entry } from '../../schema/entries/index.ts'
import type { NumberField } from './fields.ts'
import type { Measure } from './measures.ts'
import type { Measures, Pour } from './pour.ts'

/** An entry without its id, and the part of the row it stands for. */
export interface Draft {
  group: string
  entry: EntryBody
  /** The cells it was made of, by the entry's field. */
  cells: Record<string, Measure | undefined>
}

/** Stands for an id until the place of the entry in the whole sheet is known. */
const noId = '00000000-0000-8000-8000-000000000000'

/** An entry of a sump on its way. */
export interface EntryBody {
  id: string
  sump: string
  at: string
  kind: Entry['kind']
  typed: Record<string, string>
  [field: string]: unknown
}

/** What a row says of one machine. */
export interface SumpRow {
  sump: string
  at: string
  /** The date as typed. */
  typedAt: string
  by: string | null
  note: string | null
  measures: Measures
  pumps: { state: 'running' | 'stopped'; typed: string } | null
  pour: Pour
  /** The water poured: its id where one is named, and the cell's words. */
  water: { id: string | null; typed: string } | null
}

/** Readings that one look at a sump gives together are one entry; every other is an entry of its own, named by its first field. */
const readings: readonly (readonly [NumberField, ...NumberField[]])[] = [
  ['brix', 'temperature'],
  ['level', 'volume'],
  ['titration'],
  ['ph'],
  ['hardness'],
  ['chloride'],
  ['conductivity'],
  ['sulfate'],
  ['nitrate'],
  ['nitrite'],
  ['bacteria'],
  ['fungi'],
  ['trampOil'],
  ['dissolvedOxygen'],
  ['machineHours'],
]

/** The entries of one machine in one row: its readings, then what was taken out and poured in, all at one instant. */
export function entriesOf(row: SumpRow): Draft[] {
  const drafts = readingsOf(row)
  drafts.push(...takenOut(row, 'drawoff', 'volume', row.measures.get('drawoff')))
  drafts.push(...takenOut(row, 'skim', 'litres', row.measures.get('skimmed')))
  if (row.pour.outcome === 'pour') drafts.push(additionOf(row, row.pour))
  if (drafts.length === 0 && row.note !== null) drafts.push(draft(row, 'note', 'observation'))
  return drafts
}

function readingsOf(row: SumpRow): Draft[] {
  const drafts: Draft[] = []
  for (const group of readings) {
    const pumps = group[0] === 'level' ? row.pumps : null
    let made: Draft | null = null
    for (const field of group) {
      const measure = row.measures.get(field)
      if (measure === undefined) continue
      made ??= draft(row, group[0], 'reading')
      made.entry[field] = measure.value
      made.entry.typed[field] = measure.typed
      made.cells[field] = measure
    }
    if (pumps !== null) {
      made ??= draft(row, group[0], 'reading')
      made.entry.pumps = pumps.state
      made.entry.typed.pumps = pumps.typed
    }
    if (made !== null) drafts.push(made)
  }
  return drafts
}

function additionOf(row: SumpRow, { fields, typed }: Extract<Pour, { outcome: 'pour' }>): Draft {
  const made = draft(row, 'addition', 'addition')
  Object.assign(made.entry, fields)
  Object.assign(made.entry.typed, typed)
  if (row.water !== null) {
    if (row.water.id !== null) made.entry.water = row.water.id
    made.entry.typed.water = row.water.typed
  }
  const { measures } = row
  const parts = measures.get('addedConcentrate') ?? measures.get('addedWater')
  made.cells = {
    volume: measures.get('added') ?? parts,
    strength: measures.get('addedStrength') ?? parts,
    concentrate: parts,
  }
  return made
}

/** Something taken out: one amount, zero is nothing. */
function takenOut(
  row: SumpRow,
  kind: 'drawoff' | 'skim',
  field: 'volume' | 'litres',
  measure: Measure | undefined,
): Draft[] {
  if (measure === undefined || measure.value === 0) return []
  const made = draft(row, kind, kind)
  made.entry[field] = measure.value
  made.entry.typed[field] = measure.typed
  made.cells[field] = measure
  return [made]
}

function draft({ sump, at, typedAt, by, note }: SumpRow, group: string, kind: Entry['kind']): Draft {
  const entry: EntryBody = { id: noId, sump, at, kind, typed: { at: typedAt } }
  if (by !== null) entry.by = by
  if (note !== null) entry.note = note
  return { group, entry, cells: {} }
}
