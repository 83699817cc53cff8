import { say } from '@sumpbook/fluid'
import type { z } from 'zod'
import type { Fault } from '../../errors.ts'
import { observation } from '../../schema/entries/care.ts'
import { envelope } from '../../schema/entries/envelope.ts'
import type { Reading } from '../../schema/entries/index.ts'
import { addition, drawoff, skim } from '../../schema/entries/pouring.ts'
import { reading } from '../../schema/entries/reading.ts'
import { faultsOf } from '../../schema/faults.ts'
import type { Sump, Water } from '../../schema/things/index.ts'
import { brimFaults, brimOf, litresSeen } from '../../setup/brim.ts'
import type { SheetField } from '../sheet-types.ts'
import { isGap } from './cells.ts'
import type { SheetColumn } from './columns.ts'
import { fieldWords, isNumberField, type NumberField } from './fields.ts'
import { limitUnit, type Measure, type MeasureReading, readMeasure } from './measures.ts'
import { pourOf, saysToMark } from './pour.ts'
import { readPumps } from './pumps.ts'
import { type Draft, entriesOf, type SumpRow } from './row-entries.ts'
import { type RowTime, readRowTime, type TimeReading } from './row-time.ts'
import { type SheetRow, textOf } from './sheet-rows.ts'
import { waterNamed } from './waters.ts'
import { pointerKey, sameName } from './words.ts'

/** All that is needed to read any row of a sheet. */
export interface RowReading {
  shape: 'long' | 'wide'
  /** Columns that hold something, in the order of the sheet. */
  columns: readonly SheetColumn[]
  time: TimeReading
  numbers: MeasureReading
  waters: readonly Water[]
  sumpOf(machine: string): Sump | null
  /** Whether values are held against the schemas and the brim; once is enough where a sheet is read twice. */
  judge: boolean
}

/** What a row became. */
export interface RowRead {
  drafts: Draft[]
  faults: Fault[]
  /** By machine, what was read, as typed. */
  text: string
  /** Things to count and tell at the end. */
  marks: RowMark[]
}

export type RowMark =
  | 'short-year'
  | 'twice'
  | 'never'
  | 'no-amount'
  | 'above-brim'
  | 'water-unnamed'
  | 'note-alone'
  | 'waiting'

/** The columns by their part in a row. */
interface Layout extends RowReading {
  at: SheetColumn | undefined
  clock: SheetColumn | undefined
  sump: SheetColumn | undefined
  by: SheetColumn | undefined
  notes: SheetColumn[]
  /** Columns about one machine; in a wide sheet each of another. */
  machines: { machine: string | null; columns: SheetColumn[] }[]
}

/** Makes the reader of a sheet's rows: each gives its entries, or all of its faults. */
export function rowReader(reading: RowReading): (row: SheetRow) => RowRead {
  const only = (field: SheetField) => reading.columns.find((column) => column.field === field)
  const about = reading.columns.filter(
    ({ field }) => field === null || isNumberField(field) || field === 'pumps' || field === 'water',
  )
  const groups =
    reading.shape === 'long' ? [about] : Map.groupBy(about, ({ machine }) => sameName(machine ?? '')).values()
  const layout: Layout = {
    ...reading,
    at: only('at'),
    clock: only('time'),
    sump: only('sump'),
    by: only('by'),
    notes: reading.columns.filter(({ field }) => field === 'note'),
    machines: [...groups].map((columns) => ({ machine: columns[0]?.machine ?? null, columns })),
  }
  return (row) => new RowReader(row, layout).read()
}

class RowReader {
  readonly #row: SheetRow
  readonly #layout: Layout
  readonly #read: RowRead = { drafts: [], faults: [], text: '', marks: [] }

  constructor(row: SheetRow, layout: Layout) {
    this.#row = row
    this.#layout = layout
  }

  read(): RowRead {
    const { shape, machines, sump } = this.#layout
    const filled = machines.filter(({ columns }) => columns.some(({ index }) => !isGap(this.#text(index))))
    const note = this.#note()
    const named = this.#filledText(sump)
    if (filled.length === 0 && (note === null || named === null)) {
      if (note !== null) this.#read.marks.push('note-alone')
      return this.#read
    }
    const time = this.#time()
    if (this.#layout.judge) this.#words(note)
    const said = shape === 'long' ? [{ machine: named, columns: machines[0]?.columns ?? [] }] : filled
    this.#read.text = said.map((one) => this.#machine(one.machine, one.columns, { time, note })).join('; ')
    return this.#read
  }

  #time(): RowTime | null {
    const { at, clock, time } = this.#layout
    if (at === undefined) return null
    const read = readRowTime(this.#row.cells[at.index], clock === undefined ? null : this.#row.cells[clock.index], time)
    if ('expected' in read) {
      this.#fault(read.cell === 'at' ? at : clock!, read)
      return null
    }
    if (read.shortYear) this.#read.marks.push('short-year')
    if (read.shift !== null) this.#read.marks.push(read.shift)
    return read
  }

  /** @returns what was read of the machine, in words */
  #machine(
    machine: string | null,
    columns: readonly SheetColumn[],
    { time, note }: { time: RowTime | null; note: string | null },
  ): string {
    const sump = machine === null ? null : this.#layout.sumpOf(machine)
    if (machine === null && this.#layout.shape === 'long') this.#noMachine()
    const faultsBefore = this.#read.faults.length
    const cells = this.#cells(columns)
    const pour = pourOf(cells.measures, cells.toMark)
    if (pour.outcome === 'fault') this.#fault(pour.of.column, pour.fault)
    if (pour.outcome === 'no-amount') this.#read.marks.push('no-amount')
    const drafts = entriesOf({
      ...cells,
      sump: sump?.id ?? 'open',
      at: time?.at ?? anyTime,
      typedAt: time?.typed ?? '',
      by: this.#filledText(this.#layout.by),
      note,
      pour,
    })
    if (this.#layout.judge) for (const draft of drafts) this.#judge(draft, sump)
    const complete = time !== null && sump !== null && this.#read.faults.length === faultsBefore
    if (complete) this.#read.drafts.push(...drafts)
    return `${sump?.name ?? machine ?? 'no machine'}: ${cells.texts.join(', ')}`
  }

  /** What the cells of one machine hold; each that is wrong is a fault. */
  #cells(columns: readonly SheetColumn[]): Cells {
    const cells: Cells = { measures: new Map(), pumps: null, water: null, toMark: null, texts: [] }
    for (const column of columns) {
      const text = this.#text(column.index)
      if (isGap(text)) continue
      const { field } = column
      if (isNumberField(field) && !(field === 'added' && saysToMark(text))) {
        const measure = this.#measure(column as SheetColumn & { field: NumberField }, text)
        if (measure !== null) cells.texts.push(inWords(measure))
        if (measure !== null) cells.measures.set(measure.field, measure)
        continue
      }
      if (field === 'added') cells.toMark = text
      else if (field === 'pumps') cells.pumps = this.#pumps(column, text)
      else if (field === 'water') cells.water = this.#water(column, text)
      else this.#read.marks.push('waiting')
      cells.texts.push(`${field === null ? column.heading : say(fieldWords[field])} ${text}`)
    }
    return cells
  }

  #measure(column: SheetColumn & { field: NumberField }, text: string): Measure | null {
    const read = readMeasure(text, column, this.#layout.numbers)
    if (read.outcome === 'fault') this.#fault(column, read.fault)
    if (read.outcome === 'open') this.#read.marks.push('waiting')
    return read.outcome === 'measure' ? read.measure : null
  }

  #pumps(column: SheetColumn, text: string): Cells['pumps'] {
    const state = readPumps(text)
    if (state === null) this.#fault(column, { found: JSON.stringify(text), expected: say('running or stopped') })
    return state === null ? null : { state, typed: text }
  }

  #water(column: SheetColumn, text: string): Cells['water'] {
    const { waters } = this.#layout
    const found = waterNamed(text, waters)
    if (found === null && waters.length > 0) {
      const names = waters.map(({ name }) => name).join(', ')
      this.#fault(column, { found: JSON.stringify(text), expected: say('a water of the book: {names}', { names }) })
    }
    if (waters.length === 0) this.#read.marks.push('water-unnamed')
    return { id: found?.id ?? null, typed: text }
  }

  /** Ranges are the schemas'; the brim is the sump's. */
  #judge({ entry, cells }: Draft, sump: Sump | null): void {
    const fields = schemas[entry.kind as keyof typeof schemas].shape as Record<string, z.ZodType>
    const before = this.#read.faults.length
    for (const [field, measure] of Object.entries(cells)) {
      if (measure === undefined || entry[field] === undefined) continue
      const parsed = fields[field]!.safeParse(entry[field])
      if (!parsed.success) this.#outOfRange(measure, faultsOf(parsed.error, entry[field], '', limitUnit(measure.field)))
    }
    if (this.#read.faults.length > before || sump === null || (cells.level ?? cells.volume) === undefined) return
    if (entry.kind === 'reading') this.#againstBrim(entry as unknown as Reading, cells, sump)
  }

  #againstBrim(seen: Reading, cells: Draft['cells'], sump: Sump): void {
    const faults = brimFaults(seen, sump)
    for (const { pointer, expected } of faults) {
      const measure = cells[pointer.slice(1)]!
      this.#fault(measure.column, { found: JSON.stringify(measure.typed), expected })
    }
    if (faults.length === 0 && isAboveBrim(seen, sump)) this.#read.marks.push('above-brim')
  }

  #outOfRange({ typed, column }: Measure, faults: readonly Fault[]): void {
    for (const { expected } of faults) this.#fault(column, { found: JSON.stringify(typed), expected })
  }

  /** Who and what was remarked, as every entry of the row carries them. */
  #words(note: string | null): void {
    const { by, notes } = this.#layout
    for (const [column, schema, text] of [
      [by, envelope.by, this.#filledText(by)],
      [notes[0], envelope.note, note],
    ] as const) {
      const parsed = text === null ? null : schema.safeParse(text)
      if (parsed === null || parsed.success) continue
      for (const { found, expected } of faultsOf(parsed.error, text)) this.#fault(column!, { found, expected })
    }
  }

  #noMachine(): void {
    const { sump } = this.#layout
    const fault = { found: say('nothing'), expected: say('the machine that the row is about') }
    if (sump === undefined) this.#read.faults.push({ pointer: `/rows/${this.#row.row}`, row: this.#row.row, ...fault })
    else this.#fault(sump, fault)
  }

  #fault({ heading }: SheetColumn, { found, expected }: Pick<Fault, 'found' | 'expected'>): void {
    const { row } = this.#row
    this.#read.faults.push({ pointer: `/rows/${row}/${pointerKey(heading)}`, row, column: heading, found, expected })
  }

  /** Several columns of notes are put together, each after its heading. */
  #note(): string | null {
    const notes = this.#layout.notes.filter((column) => this.#filledText(column) !== null)
    if (notes.length === 0) return null
    if (notes.length === 1) return this.#text(notes[0]!.index)
    return notes.map(({ heading, index }) => `${heading}: ${this.#text(index)}`).join('; ')
  }

  #text(index: number): string {
    return textOf(this.#row.cells[index])
  }

  #filledText(column: SheetColumn | undefined): string | null {
    const text = column === undefined ? '' : this.#text(column.index)
    return isGap(text) ? null : text
  }
}

/** What one machine's cells of a row hold. */
interface Cells extends Pick<SumpRow, 'pumps' | 'water'> {
  measures: Map<NumberField, Measure>
  toMark: string | null
  /** Each in words. */
  texts: string[]
}

/** Stands for a time that is a fault, so that the row's other values are judged as well. */
const anyTime = '2000-01-01T12:00:00.000Z'

/** "pH 9.1", "3.4 °Brix". */
function inWords({ field, typed }: Measure): string {
  if (field !== 'brix') return `${say(fieldWords[field])} ${typed}`
  return /br?i?x/i.test(typed) ? typed : `${typed} °Brix`
}

const schemas = { reading, addition, drawoff, skim, observation }
/** Up to 5 % above the brim is accepted and told. */
function isAboveBrim(seen: Reading, sump: Sump): boolean {
  const [litres, brim] = [litresSeen(seen, sump), brimOf(sump)]
  return litres !== null && brim !== null && litres > brim
}
