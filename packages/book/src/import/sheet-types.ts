import type { Fault } from '../errors.ts'

/** What a column of a sheet can hold. */
export type SheetField =
  | 'at'
  | 'time'
  | 'sump'
  | 'by'
  | 'note'
  | 'brix'
  | 'titration'
  | 'ph'
  | 'hardness'
  | 'chloride'
  | 'conductivity'
  | 'sulfate'
  | 'nitrate'
  | 'nitrite'
  | 'temperature'
  | 'bacteria'
  | 'fungi'
  | 'trampOil'
  | 'dissolvedOxygen'
  | 'machineHours'
  | 'level'
  | 'volume'
  | 'pumps'
  | 'added'
  | 'addedStrength'
  | 'addedConcentrate'
  | 'addedWater'
  | 'water'
  | 'drawoff'
  | 'skimmed'

/** What a person says about a sheet: `--map MAP.json`, or the answers given in the app. Everything may be missing. */
export interface SheetMap {
  /** One reading a row, or a date column and one column a machine. */
  shape?: 'long' | 'wide'
  dates?: 'dmy' | 'mdy' | 'ymd'
  decimal?: ',' | '.'
  /** The sheet of a workbook, by name; the first without it. */
  sheet?: string
  /** Headings as they stand in the sheet; null leaves a column out. What is not said here is read from the heading. */
  columns?: Record<string, { field?: SheetField; unit?: string; sump?: string } | null>
  /** What the machine columns of a wide sheet hold. */
  values?: { field?: SheetField; unit?: string }
  /** Names as they stand in the sheet: the id of a sump of the book, or what to make of a new one. */
  machines?: Record<string, string | NewSump>
  /** For every new machine that does not say otherwise. */
  newSumps?: NewSump
  /** Fluids to add to the book, as in a book file. */
  fluids?: Record<string, unknown>[]
  /** Waters to add to the book, as in a book file. */
  waters?: Record<string, unknown>[]
}

/** A sump that the sheet names and the book does not have. null says: unknown, and leave it so. */
export interface NewSump {
  id?: string
  name?: string
  fluid?: string
  fillVolume?: number | null
  capacity?: number | null
  target?: number | null
  low?: number | null
  high?: number | null
}

/** Something the sheet does not say and the book does not know. */
export interface Question {
  /** Where the answer belongs in the map, a JSON Pointer: `/dates`, `/machines/Mill 7/fillVolume`. */
  pointer: string
  /** In words. */
  question: string
  /** What can be answered, where it is a choice. */
  choices?: string[]
}

/** The fate of one row of the sheet. */
export interface RowFate {
  row: number
  fate: 'new' | 'same' | 'corrected' | 'blank' | 'refused'
  /** What it becomes, in words. */
  text: string
}

/** What an import would do, or did. */
export interface ImportReport {
  kind: 'book' | 'sheet'
  shape?: 'long' | 'wide'
  /** How the sheet was understood. */
  columns?: {
    heading: string
    field: SheetField | null
    unit: string | null
    sump: string | null
    sumpName: string | null
  }[]
  dates?: 'dmy' | 'mdy' | 'ymd'
  decimal?: ',' | '.'
  questions: Question[]
  faults: Fault[]
  /** The first rows' fates (all of them up to 500), then only counts. */
  rows: RowFate[]
  counts: {
    rows: number
    new: number
    same: number
    corrected: number
    blank: number
    refused: number
    entries: number
    things: number
  }
  warnings: string[]
}
