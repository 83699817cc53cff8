import type { ReadField, SaidDiagnosis, SignId, Symptoms } from '@sumpbook/fluid'
import type { Value } from '../schema/values.ts'

/** What is known of a sump's fluid, and what may be behind it. */
export interface SumpDiagnosis extends SaidDiagnosis {
  sump: string
  name: string
  at: string
  /** What was weighed; a phone adds the signs ticked on it and works the answer out itself, the same as the server's. */
  symptoms: Symptoms
  /** Every figure there is of this charge, with its age. */
  read: ReadWithAge[]
  /** Observations of the last days, youngest first. */
  observed: Observed[]
}

/** A figure of the journal with its age. */
export interface ReadWithAge {
  field: ReadField
  value: Value
  entry: string
  /** UTC text. */
  at: string
  days: number
  /** Too old to count. */
  stale: boolean
  text: string
}

/** One observation of the journal in words of the published list. */
export interface Observed {
  entry: string
  sump: string
  at: string
  signs: SignId[]
  /** Words that the list does not have; the entry keeps them. */
  notUnderstood: string[]
  severity: string | null
  note: string | null
  /** Its signs that somebody must answer for. */
  toFollowUp: SignId[]
  /** When a verdict named it; null while nobody has. */
  answeredAt: string | null
}
