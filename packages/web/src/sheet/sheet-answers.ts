import { litresFrom, message, readNumber, readQuantity, say } from '@sumpbook/fluid'
import type { Question, SheetField, SheetMap, Units } from '../api/types.ts'
import { type Fault, faultParts } from '../fields/read.ts'
import { shopUnits } from '../say/units.ts'

/** A map with one answer more, at the place a question's pointer names; `undefined` takes an answer back. */
export function withAnswer(map: SheetMap, pointer: string, value: unknown): SheetMap {
  return placed(map, segments(pointer), value) as SheetMap
}

/** The answer that stands at a pointer; undefined where there is none. */
export function answerAt(map: SheetMap, pointer: string): unknown {
  return segments(pointer).reduce<unknown>(
    (value, key) => (value as Record<string, unknown> | null | undefined)?.[key],
    map,
  )
}

/** JSON Pointer, RFC 6901. */
const segments = (pointer: string): string[] =>
  pointer
    .split('/')
    .slice(1)
    .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'))

const lists = new Set(['fluids', 'waters'])

function placed(here: unknown, [key, ...rest]: string[], value: unknown, isList = false): unknown {
  if (key === undefined) return value
  if (isList) {
    const list = Array.isArray(here) ? [...(here as unknown[])] : []
    list[Number(key)] = placed(list[Number(key)] ?? {}, rest, value)
    return list
  }
  const { [key]: inner, ...others } = (here ?? {}) as Record<string, unknown>
  const next = rest.length === 0 ? value : placed(inner, rest, value, lists.has(key))
  return next === undefined ? others : { ...others, [key]: next }
}

const volumes = new Set(['fillVolume', 'capacity'])
const percents = new Set(['target', 'low', 'high'])

/** What a question asks for, by where its answer belongs. */
export type AnswerKind = 'choice' | 'volume' | 'percent' | 'number' | 'text'

export function answerKind({ pointer, choices }: Question): AnswerKind {
  if (choices !== undefined) return 'choice'
  const last = segments(pointer).at(-1) ?? ''
  if (volumes.has(last)) return 'volume'
  if (percents.has(last)) return 'percent'
  return last === 'brixFactor' ? 'number' : 'text'
}

/** Whether "not known" is an answer, as the question says. */
export const canBeUnknown = ({ question }: Question): boolean => /\(null: not known\)/.test(question)
export const questionWords = ({ question }: Question): string => question.replace(/\s*\(null: not known\)/, '')

/** A typed answer as the map takes it: litres, percent, numbers plain; text as it stands. */
export function readAnswer(text: string, kind: AnswerKind, units: Units): { value: unknown } | { fault: Fault } {
  switch (kind) {
    case 'choice':
    case 'text':
      return { value: text.trim() }
    case 'volume': {
      const read = readQuantity(text, { kind: 'volume', gallons: shopUnits[units].gallons, unit: 'L' })
      if ('fault' in read) return { fault: faultParts(read.fault) }
      return above0(text, litresFrom(read.value, read.unit ?? 'L'))
    }
    case 'percent': {
      const read = readQuantity(text, { kind: 'percent', unit: '%' })
      return 'fault' in read ? { fault: faultParts(read.fault) } : above0(text, read.value)
    }
    case 'number': {
      const read = readNumber(text)
      return 'fault' in read ? { fault: faultParts(read.fault) } : above0(text, read.value)
    }
  }
}

const above0 = (text: string, value: number) =>
  value > 0 ? { value } : { fault: { found: text.trim(), expected: say('above 0') } }

/** What a column can hold, in words that are said elsewhere. */
export const fieldWords: readonly (readonly [SheetField, string])[] = [
  ['at', message('date, or date and time')],
  ['time', message('time of day')],
  ['sump', message('machine')],
  ['by', message('who')],
  ['note', message('note')],
  ['brix', '°Brix'],
  ['titration', message('strength by titration, %')],
  ['ph', 'pH'],
  ['hardness', message('hardness')],
  ['chloride', message('chloride')],
  ['conductivity', message('conductivity')],
  ['sulfate', message('sulfate')],
  ['nitrate', message('nitrate')],
  ['nitrite', message('nitrite')],
  ['temperature', message('temperature')],
  ['bacteria', message('bacteria')],
  ['fungi', message('fungi')],
  ['trampOil', message('tramp oil, %')],
  ['dissolvedOxygen', message('dissolved oxygen')],
  ['machineHours', message('machine hours')],
  ['level', message('level by dipstick')],
  ['volume', message('volume in the sump')],
  ['pumps', message('pumps running or stopped')],
  ['added', message('volume added')],
  ['addedStrength', message('strength added, %')],
  ['addedConcentrate', message('concentrate added')],
  ['addedWater', message('water added')],
  ['water', message('which water')],
  ['drawoff', message('volume drawn off')],
  ['skimmed', message('tramp oil skimmed')],
]

const withoutUnit: ReadonlySet<SheetField> = new Set(['at', 'time', 'sump', 'by', 'note', 'pumps', 'water'])

/** Whether a column's cells are figures, which have a unit. */
export const hasUnit = (field: SheetField): boolean => !withoutUnit.has(field)

/** Choices of the map in words; a choice without words stands as it is. */
export function choiceWords(pointer: string, choice: string): string {
  const field = fieldWords.find(([name]) => name === choice)
  if (pointer.endsWith('/field') && field !== undefined) return say(field[1])
  const words: Record<string, string> = {
    dmy: message('day first: 05.10. is 5 October'),
    mdy: message('month first: 05/10 is 10 May'),
    ymd: message('year first: 2026-10-05'),
    ',': message('the comma: 7,5'),
    '.': message('the point: 7.5'),
    long: message('one reading a row'),
    wide: message('a column a machine'),
  }
  return words[choice] === undefined ? choice : say(words[choice])
}
