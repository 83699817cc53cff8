/** What the server's answers hold. The shapes of the book are its own; the rest is described by `/api/openapi.json`. */
import type { SumpItem, Today } from '@sumpbook/book/today'
import type { PlannedDay } from '@sumpbook/fluid'

export type { Observed, SumpDiagnosis } from '@sumpbook/book/diagnosis'
export type { Entry, EntryOf, Setup } from '@sumpbook/book/entries'
export type { ImportReport, NewSump, Question, RowFate, SheetField, SheetMap } from '@sumpbook/book/sheet'
export type {
  Condition,
  DoubtAnswer,
  Due,
  Fan,
  FannedDay,
  LastReading,
  Outlook,
  RecipeBench,
  Snoozed,
  SumpItem,
  SumpNow,
  Today,
  TodayDue,
  TodayItem,
} from '@sumpbook/book/today'

import type { EntryOf } from '@sumpbook/book/entries'

/** What was measured of a thing of the shop: a water's analysis, a mixer's check. */
export type Measurement = EntryOf<'analysis'> | EntryOf<'check'>

export type Units = Today['shop']['units']
export type Cart = Today['cart']
export type Recipe = SumpItem['recipe']

/** A fault as problem details name it. */
export interface FaultDetail {
  pointer: string
  found: string
  expected: string
  row?: number
  column?: string
}

/** Problem details, RFC 9457. */
export interface Problem {
  type?: string
  title: string
  status?: number
  detail?: string
  errors?: FaultDetail[]
  /** The values are possible: they are taken once their pointers stand in the entry's `confirmed`. */
  confirmable?: boolean
}

export interface ShopOfBook {
  name: string
  timeZone: string
  /** In which volumes are typed and shown on this device. */
  units: Units
  /** What the shop itself is set up for, where this device reads in others. */
  ownUnits?: Units
  currency: string
  /** Days after which every sump is read again; a week where nobody said. */
  readEveryDays?: number
  /** Whose guidance it goes by, as the book keeps it. */
  guidance?: Record<string, unknown>
  /** When shifts begin on a working day, `06:00`; one from six where nobody said. */
  shifts?: string[]
  /** What goes into a mix beside concentrate and water, by label. */
  additives?: unknown[]
}

/** A thing of the shop, field by field as the book keeps it. */
export interface Thing {
  id: string
  name: string
  [field: string]: unknown
}

export interface Book {
  empty: boolean
  demo: boolean
  shop: ShopOfBook
  /** How many. */
  sumps: number
  fluids: Thing[]
  waters: Thing[]
  containers: Thing[]
  mixers: Thing[]
  instruments?: Thing[]
  meters?: Thing[]
  wasteContainers?: Thing[]
  /** As the book keeps them. */
  sumpList?: Thing[]
  version: string
}

export interface HistoryEntry {
  at: string
  entry: string
  kind: string
  by: string | null
  concentration: { mean: number; low90: number; high90: number } | null
  ph: number | null
  /** mg/L as CaCO3; null where it was read as a class or not at all. */
  hardness: number | null
  /** The class of a strip, mg/L as CaCO3; an end that it does not have is null. */
  hardnessClass: { low: number | null; high: number | null } | null
  text: string
  withdrawn: boolean
  reason: string | null
}

export interface SumpPage extends SumpItem {
  /** Newest last. */
  history: HistoryEntry[]
}

export interface JournalEntry {
  id: string
  at: string
  kind: string
  sump: string | null
  by: string | null
  text: string
  withdrawn: boolean
  reason: string | null
}

export interface JournalPart {
  entries: JournalEntry[]
  next: string | null
  /** How far back was looked; null down to the first entry. */
  lookedBackTo: string | null
}

/** Where a sump goes by a plan of steady top-ups. */
export interface Plan {
  water: string
  strength: number
  every: number
  ahead: PlannedDay[]
}

/** Minerals as they stand and as they would; null where nothing was recorded. */
export interface OtherWaterAnswer {
  minerals: { hardness: { asPoured: number; asked: number } } | null
}
