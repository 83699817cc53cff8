import { message, say } from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'
import { type Fault, type FieldRead, readHardness, readLitres, readPercent, readPlain } from '../fields/read.ts'
import { fieldPercent, fieldVolume, shopUnits } from '../say/units.ts'
import { type ListRead, readDips, readPads } from './list-fields.ts'
import { textOf } from './texts-of.ts'
import type { Faults, Texts, ThingField } from './thing-field.ts'
import { valueAt } from './value-at.ts'

export type ThingRead = { values: Record<string, unknown> } | { faults: Faults }

/**
 * The values of a form, by path, null where a field is empty; or every fault, each at its field. A text that was not
 * touched keeps its thing's value to the last digit: `before` says what it was.
 */
export function readFields(
  texts: Texts,
  fields: readonly ThingField[],
  units: Units,
  before: Readonly<Record<string, unknown>> = {},
): ThingRead {
  const faults: Record<string, Fault> = {}
  const values: Record<string, unknown> = {}
  for (const field of fields) {
    const text = (texts[field.path] ?? '').trim()
    const old = valueAt(before, field.path)
    if (old !== undefined && text === textOf(old, field, units)) {
      values[field.path] = old
      continue
    }
    const read = readText(text, field, units)
    if ('fault' in read) faults[field.path] = read.fault
    else if (read.value === null && field.required === true)
      faults[field.path] = { found: say('nothing'), expected: say('a name') }
    else values[field.path] = read.value
  }
  for (const [path, fault] of crossFaults(values, units)) faults[path] ??= fault
  return Object.keys(faults).length > 0 ? { faults } : { values }
}

function readText(
  text: string,
  { kind, ends }: ThingField,
  units: Units,
): FieldRead | ListRead | { value: string | null } {
  if (text === '') return { value: null }
  switch (kind) {
    case 'text':
    case 'choice':
    case 'sump':
      return { value: text }
    case 'volume':
      return readLitres(text, units, ends)
    case 'percent':
      return readPercent(text, ends)
    case 'number':
      return readPlain(text, ends)
    case 'hardness':
      return readHardness(text)
    case 'pads':
      return readPads(text)
    case 'dips':
      return readDips(text, units)
  }
}

/** What two fields cannot both be. */
function crossFaults(values: Readonly<Record<string, unknown>>, units: Units): [string, Fault][] {
  const pairs = [
    ['limits.concentration.low', 'limits.concentration.target', 'percent', message('at most the target, {value}')],
    [
      'limits.concentration.target',
      'limits.concentration.high',
      'percent',
      message('at most the upper end of the band, {value}'),
    ],
    [
      'limits.concentration.low',
      'limits.concentration.high',
      'percent',
      message('at most the upper end of the band, {value}'),
    ],
    ['limits.concentration.target', 'maxMixStrength', 'percent', message('at most the strongest mix poured, {value}')],
    ['minVolume', 'fillVolume', 'volume', message('at most the full mark, {value}')],
    ['fillVolume', 'capacity', 'volume', message('at most the brim, {value}')],
    ['graduation', 'capacity', 'volume', message('at most the whole bucket, {value}')],
  ] as const
  return pairs.flatMap(([lesser, greater, kind, expected]): [string, Fault][] => {
    const [low, high] = [values[lesser], values[greater]]
    if (typeof low !== 'number' || typeof high !== 'number' || low <= high) return []
    const written = (value: number) =>
      kind === 'volume' ? `${fieldVolume(value, units)} ${shopUnits[units].volumeWord}` : `${fieldPercent(value)} %`
    return [[lesser, { found: written(low), expected: say(expected, { value: written(high) }) }]]
  })
}
