import type { Ends, Fault } from '../fields/read.ts'

/** One field of a thing's form, its texts as messages: what it is called, how its text is read, and where its value stands in the thing. */
export interface ThingField {
  /** Its path in the thing, joined by dots: "limits.concentration.low". */
  path: string
  label: string
  hint?: string
  kind: 'text' | 'choice' | 'volume' | 'percent' | 'number' | 'hardness' | 'pads' | 'dips' | 'sump'
  ends?: Ends
  choices?: readonly (readonly [value: string, words: string])[]
  required?: boolean
}

/** What stands in a form's fields, by path. */
export type Texts = Readonly<Record<string, string>>
export type Faults = Readonly<Record<string, Fault>>
