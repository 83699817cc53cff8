import { inEnglish } from '@sumpbook/fluid'
import { namesOfSumps } from '../../import/sheet/machines.ts'
import { waterNamed } from '../../import/sheet/waters.ts'
import { sameName } from '../../import/sheet/words.ts'
import type { SheetField } from '../../import/sheet-types.ts'
import { type JournalFilter, lineMatches, storeQuery } from '../../journal/journal-filter.ts'
import { lineOf, readWithdrawals } from '../../journal/lines.ts'
import { sayEntry } from '../../journal/say-entry.ts'
import { type Entry, type EntryOf, entryKinds } from '../../schema/entries/index.ts'
import type { Value } from '../../schema/values.ts'
import { readThings } from '../../setup/read-things.ts'
import type { Things } from '../../setup/things.ts'
import type { JournalReader } from '../../store/store.ts'

import { plain } from './plain-number.ts'

/** A cell: a number as a number, a class or words as text, nothing as null. */
export type TableCell = string | number | null

/** A column: what our own importer reads it as, or words for people only. */
interface Column {
  heading: string
  field: SheetField | 'kind' | 'said'
}

/** Canonical units, named in the heading so that no reader has to guess. */
const columns: readonly Column[] = [
  { heading: 'Date', field: 'at' },
  { heading: 'Machine', field: 'sump' },
  { heading: 'Entry', field: 'kind' },
  { heading: '°Brix', field: 'brix' },
  { heading: 'Titration (%)', field: 'titration' },
  { heading: 'pH', field: 'ph' },
  { heading: 'Hardness (ppm)', field: 'hardness' },
  { heading: 'Chloride (mg/L)', field: 'chloride' },
  { heading: 'Conductivity (mS/cm)', field: 'conductivity' },
  { heading: 'Sulfate (mg/L)', field: 'sulfate' },
  { heading: 'Nitrate (mg/L)', field: 'nitrate' },
  { heading: 'Nitrite (mg/L)', field: 'nitrite' },
  { heading: 'Temperature (°C)', field: 'temperature' },
  { heading: 'Bacteria (CFU/mL)', field: 'bacteria' },
  { heading: 'Fungi (CFU/mL)', field: 'fungi' },
  { heading: 'Tramp oil (%)', field: 'trampOil' },
  { heading: 'Dissolved oxygen (mg/L)', field: 'dissolvedOxygen' },
  { heading: 'Machine hours (h)', field: 'machineHours' },
  { heading: 'Level (mm)', field: 'level' },
  { heading: 'Volume in sump (L)', field: 'volume' },
  { heading: 'Pumps', field: 'pumps' },
  { heading: 'Mix added (L)', field: 'added' },
  { heading: 'Added strength (%)', field: 'addedStrength' },
  { heading: 'Concentrate added (L)', field: 'addedConcentrate' },
  { heading: 'Which water', field: 'water' },
  { heading: 'Drawn off (L)', field: 'drawoff' },
  { heading: 'Tramp oil skimmed (L)', field: 'skimmed' },
  { heading: 'Who', field: 'by' },
  { heading: 'Note', field: 'note' },
  { heading: 'In words', field: 'said' },
]

/** Fields of a reading that have a column of their name. */
const readingFields = columns.map(({ field }) => field).slice(3, 20) as (keyof EntryOf<'reading'> & SheetField)[]

/** The headings of the table. */
export const tableHeadings: readonly string[] = columns.map(({ heading }) => heading)

/** Entries read at a time. */
const entriesAtOnce = 2000

/** A part of the log. What was entered about the shop itself is in it too, in words, with no machine beside it. */
export interface AskedRows {
  filter: JournalFilter
  /** Names of people by id. */
  names: ReadonlyMap<string, string>
}

type Row = Partial<Record<Column['field'], TableCell>>

/**
 * What was entered about sumps and stands, one entry a row, oldest first, in canonical units: for people and their spreadsheets, and for
 * our own importer, which reads the same values again. What the importer knows no column for (charges, transfers, cleanouts …) stands in
 * words. Of what a book holds this is a part: the whole is the book file.
 */
export async function* tableRows(journal: JournalReader, asked: AskedRows | null = null): AsyncGenerator<TableCell[]> {
  const things = (await readThings(journal)).at()
  const withdrawals = await readWithdrawals(journal)
  const { withdrawn } = withdrawals
  const named = names(things)
  const query = storeQuery(asked?.filter ?? {}, things.shop.timeZone)
  const matches = asked === null ? null : lineMatches(asked.filter)
  let after: { at: string; rank: number; id: string } | undefined
  for (;;) {
    const entries = await journal.entries({
      ...query,
      order: 'time',
      limit: entriesAtOnce,
      ...(after === undefined ? {} : { after }),
    })
    for (const stored of entries) {
      const { id, at, sump, kind, body } = stored
      if (kind === 'void' || withdrawn.has(id)) continue
      if (sump === null ? asked === null : !things.sump.has(sump)) continue
      if (!(entryKinds as readonly string[]).includes(kind)) continue
      const entry = JSON.parse(body) as Entry
      const row: Row = {
        at,
        sump: sump === null ? null : named.sump(sump),
        kind,
        ...valuesOf(entry, things, named.water),
      }
      if (asked !== null) {
        const line = lineOf(stored, things, withdrawals, {})
        if (!matches!(line)) continue
        row.by = line.by === null ? null : (asked.names.get(line.by) ?? line.by)
      }
      yield columns.map(({ field }) => row[field] ?? null)
    }
    const last = entries.at(-1)
    if (last === undefined || entries.length < entriesAtOnce) return
    after = { at: last.at, rank: last.rank, id: last.id }
  }
}

/** Names as our importer finds them again: the name where it is one thing's alone, else the id. */
function names({ sump: sumps, water: waters }: Things) {
  const byName = namesOfSumps([...sumps.values()])
  return {
    sump: (id: string) => {
      const { name } = sumps.get(id)!
      const found = byName.get(sameName(name)) ?? []
      return found.length === 1 ? name : id
    },
    water: (id: string) => {
      const { name } = waters.get(id) ?? { name: id }
      return waterNamed(name, [...waters.values()])?.id === id ? name : id
    },
  }
}

function valuesOf(entry: Entry, things: Things, waterName: (id: string) => string): Row {
  const row = columnsOf(entry, waterName)
  if (row === null) return { said: inEnglish(() => sayEntry(entry, things, { units: things.shop.units })) }
  return {
    ...row,
    ...(entry.by === undefined ? {} : { by: entry.by }),
    ...(entry.note === undefined ? {} : { note: entry.note }),
  }
}

/** The entry's values by column; null where they do not hold all of what it is. */
function columnsOf(entry: Entry, waterName: (id: string) => string): Row | null {
  switch (entry.kind) {
    case 'reading': {
      if (entry.pending === true || (entry.analytes ?? []).length > 0) return null
      const row: Row = {}
      for (const field of readingFields) {
        const value = entry[field] as Value | undefined
        if (value !== undefined) row[field] = cellOf(value)
      }
      return entry.pumps === undefined ? row : { ...row, pumps: entry.pumps }
    }
    case 'addition':
      return additionOf(entry, waterName)
    case 'drawoff':
      return entry.volume === undefined ? null : { drawoff: entry.volume }
    case 'skim':
      return entry.litres === undefined ? null : { skimmed: entry.litres }
    case 'observation':
      return (entry.signs ?? []).length === 0 && entry.photo === undefined ? {} : null
    default:
      return null
  }
}

function additionOf(
  { volume, strength, concentrate, toMark, meter, additive, water }: EntryOf<'addition'>,
  waterName: (id: string) => string,
): Row | null {
  if (meter !== undefined || additive !== undefined) return null
  const row: Row = {}
  if (volume !== undefined) row.added = volume
  else if (toMark === true) row.added = 'full'
  else if (concentrate !== undefined)
    return { addedConcentrate: concentrate, ...(water === undefined ? {} : { water: waterName(water) }) }
  else return null
  if (strength !== undefined) row.addedStrength = strength
  if (water !== undefined) row.water = waterName(water)
  return row
}

/** "<25", ">=1000", "25-50": classes as strips give them and our importer reads them. */
function cellOf(value: Value): TableCell {
  if (typeof value === 'number') return value
  if ('below' in value) return `<${plain(value.below)}`
  if ('atLeast' in value) return `>=${plain(value.atLeast)}`
  return `${plain(value.low)}-${plain(value.high)}`
}
