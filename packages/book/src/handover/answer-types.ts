import type { HandoverParts } from '@sumpbook/fluid'
import type { Today } from '../today/today.ts'

/** One note, and who has read it. */
export interface HandoverNote {
  entry: string
  at: string
  by: string | null
  text: string
  readBy: { entry: string; by: string | null; at: string }[]
}

/** What one shift leaves to the next: a note as it might be written now, and the last notes. */
export interface Handovers {
  at: string
  shift: Today['shift']
  /** What the note would say, part by part, and as one text. */
  proposal: HandoverParts & { text: string }
  /** Youngest first. */
  notes: HandoverNote[]
}

/** The step of the sign-off by which somebody says that they have read a note. */
export const readStep = (note: string) => `handover ${note}`
