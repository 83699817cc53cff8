/** How the level was seen: litres on a glass, "at the mark", quarters of it by eye, or a dipstick. */
export type LevelBy = 'volume' | 'mark' | 'quarter' | 'dip'

/** What an eye tells apart of a full mark; the full one is "at the mark". */
export const quarters = ['¼', '½', '¾'] as const

/** What was typed at one sump, as it stands in the fields. */
export interface Typed {
  levelBy: LevelBy
  level: string
  pumps: 'running' | 'stopped'
  brix: string
  /** Pointers whose implausible value the person said is right, with the text they said it of. */
  confirmed: Readonly<Record<string, string>>
}

export const nothingTyped: Typed = { levelBy: 'volume', level: '', pumps: 'stopped', brix: '', confirmed: {} }

/** What cannot be: shown at the field, nothing is written. */
export interface FieldFault {
  field: 'level' | 'brix'
  found: string
  expected: string
}

/** A field as it was read: what it says, null for nothing, or what is wrong with it. */
export type Read<T> = { seen: T | null } | { fault: FieldFault }

/** "3." is on its way to "3.4": no fault while it is typed. */
export const whole = (text: string) => text.trim().replace(/(?<=\d)[.,]$/, '')
