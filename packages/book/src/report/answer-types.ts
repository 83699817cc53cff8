/** What was written of a month: the answer alone, without code. */
import type { Reader } from '@sumpbook/fluid'
import type { BandDays, Cost, Litres } from '../cost/answer-types.ts'

/** What was written of one month, for print. Litres; money in whole cents; times RFC 3339, UTC. */
export interface MonthReport {
  month: string
  from: string
  to: string
  /** When it was asked for; a month that is not over is a report of its days so far. */
  madeAt: string
  isOver: boolean
  shop: { name: string; timeZone: string; units: Reader['units']; currency: string }
  /** The chain's head whose entries are in it. */
  head: { seq: number; hash: string }
  /** That stand. */
  entries: number
  cost: Cost
  sumps: SumpMonth[]
  cleanouts: CleanoutLine[]
  waste: { stored: WasteLine[]; pickups: PickupLine[] }
  stock: StockLine[]
  verdicts: { entry: string; at: string; sump: string | null; answer: string; by: string | null }[]
  people: { id: string | null; entries: number }[]
  corrections: Correction[]
  sentences: string[]
}

export interface SumpMonth {
  sump: string
  name: string
  fluid: string
  cents: number
  litres: Litres
  /** Litres drawn off, skimmed, moved out and moved in, as written. */
  out: { drawnOff: number; skimmed: number; movedOut: number; movedIn: number }
  readings: { strength: number; all: number; due: number; longestGapDays: number | null }
  /** Null of a straight oil. */
  days: BandDays | null
  verdicts: number
  cleanouts: number
  wasteLitres: number
}

export interface CleanoutLine {
  entry: string
  at: string
  sump: string
  cleaner: string | null
  hours: number | null
  wasteLitres: number | null
  by: string | null
}

export interface WasteLine {
  entry: string
  at: string
  stream: string
  litres: number | null
  kilograms: number | null
  by: string | null
}

export interface PickupLine extends WasteLine {
  code: string | null
  document: string | null
}

/** Concentrate of one fluid: what came, what went to the floor, what was poured. */
export interface StockLine {
  fluid: string
  name: string
  received: number
  issued: number
  poured: number
}

/** An entry of the month that was withdrawn, or a withdrawal of the month. */
export interface Correction {
  entry: string
  at: string
  sump: string | null
  text: string
  by: string | null
  withdrawn: { at: string; by: string | null; reason: string | null }
}
