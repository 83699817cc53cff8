import { say } from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'
import { type Fault, readLitres, readPlain, withUnit } from '../fields/read.ts'
import { shopUnits } from '../say/units.ts'

/** A field of a small form, its words as they are said. */
export interface SmallField {
  key: string
  label: string
  kind: 'volume' | 'number' | 'text' | 'day' | 'choice'
  hint?: string
  required?: boolean
  /** A number below this, or a volume below it in litres, is refused; 0 is refused where nothing is said. */
  least?: number
  most?: number
  /** A number without decimals. */
  whole?: boolean
  choices?: readonly (readonly [value: string, words: string])[]
  /** Texts to choose from; others can be typed. */
  list?: readonly string[]
}

export type SmallTexts = Readonly<Record<string, string>>

/** What a small form says: canonical figures and texts by key, null where a field is empty; `typed` beside them. */
export interface SmallValues {
  numbers: Readonly<Record<string, number | null>>
  texts: Readonly<Record<string, string | null>>
  typed: Readonly<Record<string, string>>
}

export type SmallRead = { values: SmallValues } | { faults: Readonly<Record<string, Fault>> }

/** Every field of a small form at once, or every fault at its field. */
export function readSmall(texts: SmallTexts, fields: readonly SmallField[], units: Units): SmallRead {
  const faults: Record<string, Fault> = {}
  const numbers: Record<string, number | null> = {}
  const plain: Record<string, string | null> = {}
  const typed: Record<string, string> = {}
  for (const field of fields) {
    const text = (texts[field.key] ?? '').trim()
    if (text === '') {
      numbers[field.key] = null
      plain[field.key] = null
      if (field.required === true) faults[field.key] = { found: say('nothing'), expected: expectedOf(field) }
      continue
    }
    if (field.kind === 'text' || field.kind === 'day' || field.kind === 'choice') {
      plain[field.key] = text
      continue
    }
    const ends = {
      ...(field.least === undefined ? { above: 0 } : { min: field.least }),
      ...(field.most === undefined ? {} : { max: field.most }),
    }
    const read = field.kind === 'volume' ? readLitres(text, units, ends) : readPlain(text, ends)
    if ('fault' in read) faults[field.key] = read.fault
    else if (field.whole === true && !Number.isInteger(read.value)) {
      faults[field.key] = { found: text, expected: say('a whole number') }
    } else {
      numbers[field.key] = read.value
      typed[field.key] = field.kind === 'volume' ? withUnit(text, shopUnits[units].volumeWord) : text
    }
  }
  return Object.keys(faults).length > 0 ? { faults } : { values: { numbers, texts: plain, typed } }
}

function expectedOf({ kind }: SmallField): string {
  if (kind === 'day') return say('a date')
  if (kind === 'choice') return say('one of the choices')
  return kind === 'text' ? say('a few words') : say('a number')
}
