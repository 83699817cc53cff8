import type { CleanoutPour, DrainWay, SheetFigure } from '@sumpbook/fluid'
import type { Claim } from './claim-types.ts'
import type { CleanoutValues } from './sheet-values.ts'

/** What a job sheet is for. */
export type SheetKind = 'cleanout' | 'change-over' | 'weekend' | 'holidays' | 'mothballed' | 'restart'

export const sheetKinds: readonly SheetKind[] = [
  'cleanout',
  'change-over',
  'weekend',
  'holidays',
  'mothballed',
  'restart',
]

/** Who signed a step, and what was read at it. */
export interface Signed {
  /** The entry. */
  entry: string
  by: string | null
  /** RFC 3339, UTC. */
  at: string
  values: Record<string, unknown>
  note: string | null
}

/** A step of a sheet before anybody works by it. */
export interface PlannedStep {
  id: string
  title: string
  text: string
  /** What to mind, a sentence each. */
  cautions: string[]
  signs: 'operator' | 'keeper'
  /** What is asked of whoever signs it. */
  asks: SheetFigure[]
  /** About how long it takes; 0 where nothing is reckoned. */
  hours: number
  /** Litres moved. */
  volume: number
  pour: CleanoutPour | null
  /** Entries that are written with its sign-off, but for id, time and person. */
  writes: ({ kind: string } & Record<string, unknown>)[]
}

/** A step of a job as far as it has come. */
export interface JobStep extends PlannedStep {
  /** The first signature in time order. */
  signed: Signed | null
  /** Signatures after the first: whoever made them should know that it was signed already. */
  again: Signed[]
  /** Signed, and what was read at it lets the next one begin. */
  isDone: boolean
  /** What its figures say; null where nothing is judged. `accepted` is null while a figure is missing or leaves it open. */
  verdict: { accepted: boolean | null; sentences: string[] } | null
}

/**
 * `planned`: nothing is signed yet · `open`: work goes on · `waiting`: all is done but the slide of one or two weeks later · `done` ·
 * `given-up`: somebody ended it before.
 */
export type JobState = 'planned' | 'open' | 'waiting' | 'done' | 'given-up'

/** A job in a list. */
export interface JobLine {
  /** Id of the entry that opened it. */
  id: string
  sheet: SheetKind
  /** "Cleanout of Mill 3". */
  title: string
  sump: string | null
  name: string
  state: JobState
  openedBy: string | null
  openedAt: string
  /** The day it is planned for, `2026-03-03`; null where nobody said. */
  plannedOn: string | null
  /** Steps done, and how many there are. */
  done: number
  steps: number
  /** Title of the step that comes next; null where none does. */
  next: string | null
  /** The day on which the later slide is due; null where none is. */
  slideOn: string | null
  /** When its last step was signed. */
  endedAt: string | null
  claimedBy: Claim | null
  /** Where it stands, one sentence. */
  sentence: string
}

/** A job with its sheet. */
export interface Job extends Omit<JobLine, 'steps'> {
  steps: JobStep[]
  /** Id of the step that comes next. */
  nextStep: string | null
  /** Of a cleanout; null of other sheets. */
  totals: { waste: number; downtimeHours: number; labourHours: number; drainBy: DrainWay['way'] } | null
  values: Record<string, unknown>
  /** Signatures of steps that its sheet does not have. */
  strays: (Signed & { step: string })[]
}

/** What is under way, planned, and done. */
export interface Jobs {
  at: string
  /** Work goes on, or the later slide is still to be read; most urgent first. */
  open: JobLine[]
  planned: JobLine[]
  /** Youngest first. */
  done: JobLine[]
}

/** A cleanout of one sump before it is begun. */
export interface CleanoutPlan {
  sump: string
  name: string
  title: string
  sheet: SheetKind
  sentence: string
  steps: PlannedStep[]
  waste: number
  downtimeHours: number
  labourHours: number
  /** In the shop's currency; null where nothing has a price. */
  cost: number | null
  currency: string
  /** What the change to another fluid asks for, a sentence each; empty where none comes. */
  change: string[]
  notes: string[]
  /** What the job is opened with: an entry but for id, time and person, whose `job` is its own id. */
  opening: { kind: 'signoff'; sump: string; step: 'opened'; sheet: SheetKind; values: CleanoutValues }
}

/** When each machine stands, and for how long all of them together. */
export interface SideBySide {
  sentence: string
  machines: { sump: string; name: string; start: string; finish: string; hours: number; stretches: Stretched[] }[]
  finish: string
  /** Hours for which machines stand, all together. */
  downtimeHours: number
  /** No order ends earlier than so many hours. */
  lowerBoundHours: number
  exact: boolean
}

interface Stretched {
  name: string
  start: string
  finish: string
  /** Hours from the start of all. */
  from: number
  to: number
}
