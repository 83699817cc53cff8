import { message, say } from '@sumpbook/fluid'
import type { Thing, Units } from '../api/types.ts'
import type { ThingKind } from '../entry/entries.ts'
import {
  type Ends,
  type Fault,
  type FieldRead,
  readHardness,
  readLitres,
  readPercent,
  readPlain,
} from '../fields/read.ts'
import { fieldPercent, fieldVolume, shopUnits } from '../say/units.ts'
import { inWalkingOrder } from '../standing/walking-order.ts'
import { type DipTable, dipsText, type ListRead, padsText, readDips, readPads } from './list-fields.ts'

/** One field of a thing's form, its texts as messages: what it is called, how its text is read, and where its value stands in the thing. */
export interface ThingField {
  /** Its path in the thing, joined by dots: "limits.concentration.low". */
  path: string
  label: string
  hint?: string
  kind: 'text' | 'choice' | 'volume' | 'percent' | 'number' | 'hardness' | 'pads' | 'dips'
  ends?: Ends
  choices?: readonly (readonly [value: string, words: string])[]
  required?: boolean
}

const band: ThingField[] = [
  { path: 'limits.concentration.low', label: message('Band from, %'), kind: 'percent' },
  {
    path: 'limits.concentration.target',
    label: message('Target, %'),
    hint: message('Empty: the middle'),
    kind: 'percent',
  },
  { path: 'limits.concentration.high', label: message('Band to, %'), kind: 'percent' },
]

const fluidName: ThingField[] = [{ path: 'name', label: message('Name of the fluid'), kind: 'text', required: true }]
const fluidClass: ThingField[] = [
  {
    path: 'class',
    label: message('Kind of fluid'),
    kind: 'choice',
    choices: [
      ['', message('not known')],
      ['soluble-oil', message('soluble oil')],
      ['semi-synthetic', message('semi-synthetic')],
      ['synthetic', message('synthetic')],
      ['straight-oil', message('straight oil (never mixed with water)')],
    ],
  },
]
const brixFactor: ThingField[] = [
  {
    path: 'brixFactor',
    label: message('Brix factor, % per °Brix'),
    hint: message(
      'From the fluid’s sheet, where it may be called refractometer factor. Without it no strength follows from a reading.',
    ),
    kind: 'number',
    ends: { above: 0, max: 20 },
  },
]

const fluidMore: ThingField[] = [
  {
    path: 'minTopUp',
    label: message('Leanest top-up its sheet allows, %'),
    hint: message('Empty: plain water is allowed'),
    kind: 'percent',
  },
  {
    path: 'maxMixStrength',
    label: message('Strongest mix poured, %'),
    hint: message('Empty: 20 %'),
    kind: 'percent',
    ends: { above: 0, max: 100 },
  },
]

const water: ThingField[] = [
  { path: 'name', label: message('Name of the water'), kind: 'text', required: true },
  {
    path: 'kind',
    label: message('Kind of water'),
    kind: 'choice',
    choices: [
      ['', message('not known')],
      ['tap', message('tap')],
      ['well', message('well')],
      ['softened', message('softened')],
      ['reverse-osmosis', message('reverse osmosis')],
      ['deionised', message('deionised')],
    ],
  },
]

const waterMore: ThingField[] = [
  {
    path: 'hardness',
    label: message('Hardness, ppm as CaCO3'),
    hint: message('Another unit may be typed: 14 °dH, 15 gpg'),
    kind: 'hardness',
  },
]

const sumpName: ThingField[] = [
  { path: 'name', label: message('Name of the machine or sump'), kind: 'text', required: true },
]
const sumpPlace: ThingField[] = [{ path: 'place', label: message('Where it stands'), kind: 'text' }]
const sumpMark: ThingField[] = [
  {
    path: 'fillVolume',
    label: message('Full mark'),
    hint: message('What it holds there, pumps stopped; often on the machine’s plate'),
    kind: 'volume',
    ends: { above: 0 },
  },
]

const sumpMore: ThingField[] = [
  {
    path: 'capacity',
    label: message('Brim'),
    hint: message('Empty: taken as a quarter above the mark'),
    kind: 'volume',
    ends: { above: 0 },
  },
  { path: 'minVolume', label: message('Pumps’ suction'), hint: message('Below it they draw air'), kind: 'volume' },
  { path: 'holdUp', label: message('Out in the lines'), hint: message('While the pumps run'), kind: 'volume' },
  { path: 'order', label: message('Place on the round'), hint: message('1 comes first'), kind: 'number' },
]

const dipTable: ThingField[] = [
  {
    path: 'dipTable',
    label: message('Dip table'),
    hint: message(
      'What it holds at a few levels of the dipstick, pumps stopped; the round then takes the dip as it is read',
    ),
    kind: 'dips',
  },
]

const container: ThingField[] = [
  { path: 'name', label: message('Name of the bucket'), kind: 'text', required: true },
  { path: 'capacity', label: message('It holds'), kind: 'volume', ends: { above: 0 } },
  {
    path: 'graduation',
    label: message('Between two of its marks'),
    hint: message('Empty: half a litre by eye'),
    kind: 'volume',
    ends: { above: 0 },
  },
]

const instrument: ThingField[] = [
  { path: 'name', label: message('Name of the instrument or the strips'), kind: 'text', required: true },
  {
    path: 'kind',
    label: message('What it is'),
    kind: 'choice',
    choices: [
      ['', message('not known')],
      ['refractometer', message('refractometer')],
      ['strip-ph', message('pH strips')],
      ['strip-nitrite', message('nitrite strips')],
      ['strip-hardness', message('hardness strips')],
      ['strip', message('strips that their name tells of')],
      ['ph-meter', message('pH meter')],
      ['dip-slide', message('dip slides')],
    ],
  },
  {
    path: 'pads',
    label: message('Pads of the strips'),
    hint: message(
      'As printed, the lowest first, with a blank between: 0 5 10 25 50. On the round each is a tap. Nitrite in mg/L, hardness in ppm as CaCO3.',
    ),
    kind: 'pads',
  },
  {
    path: 'resolution',
    label: message('Smallest step of its scale'),
    hint: message('A refractometer: in °Brix. Empty: 0.2'),
    kind: 'number',
    ends: { above: 0 },
  },
]

/** What a first recipe cannot do without, group by group as it is asked for; and what can wait. */
export const firstFields = {
  fluid: [...fluidName, ...brixFactor],
  band,
  fluidClass,
  sump: [...sumpName, ...sumpMark],
  sumpPlace,
  water,
  container,
} as const
/** What a thing of the first day may have. */
export const firstDayFields = {
  fluid: [...fluidName, ...brixFactor, ...band, ...fluidClass],
  sump: [...sumpName, ...sumpMark, ...sumpPlace],
  water,
  container,
} as const
/** All fields of a thing that this page can change. What it does not show stays as it is. */
export const allFields = {
  fluid: [...fluidName, ...fluidClass, ...brixFactor, ...band, ...fluidMore],
  water: [...water, ...waterMore],
  sump: [
    ...sumpName,
    ...sumpPlace,
    ...sumpMark,
    ...sumpMore,
    ...dipTable,
    ...band.map((field) => ({ ...field, hint: message('Empty: as its fluid’s') })),
  ],
  container,
  instrument,
} as const

/** Of a sump that is new, what a first recipe asks of it, and what can wait; no field is in neither. */
export const newSumpFields = {
  first: [...sumpName, ...sumpMark],
  later: allFields.sump.filter(({ path }) => ![...sumpName, ...sumpMark].some((first) => first.path === path)),
} as const

/**
 * What a new sump's form begins with, from the sumps that are there: the fluid of the one before, and the place behind it on the round. A band of
 * its own is not among it: without one, the fluid's holds.
 */
export function nextSump(sumps: readonly Thing[], fluids: readonly Thing[]): { fluid: string; texts: Texts } {
  const before = sumps.toSorted((a, b) => inWalkingOrder(stopOf(a), stopOf(b))).at(-1)
  const fluid = fluids.find(({ id }) => id === before?.fluid) ?? (fluids.length === 1 ? fluids[0] : undefined)
  const texts: Texts = typeof before?.order === 'number' ? { order: String(Math.floor(before.order) + 1) } : {}
  return { fluid: fluid?.id ?? '', texts }
}

const stopOf = ({ name, order }: Thing) => ({ name: String(name), order: typeof order === 'number' ? order : null })

export type FormKind = Exclude<ThingKind, 'shop' | 'mixer'>

/** What stands in a form's fields, by path. */
export type Texts = Readonly<Record<string, string>>
export type Faults = Readonly<Record<string, Fault>>

/** A thing as texts, in the shop's units. */
export function textsOf(thing: Readonly<Record<string, unknown>>, fields: readonly ThingField[], units: Units): Texts {
  return Object.fromEntries(fields.map((field) => [field.path, textOf(valueAt(thing, field.path), field, units)]))
}

function textOf(value: unknown, { kind }: ThingField, units: Units): string {
  if (value === undefined || value === null) return ''
  if (kind === 'pads') return padsText(value as number[])
  if (kind === 'dips') return dipsText(value as DipTable, units)
  if (typeof value !== 'number') return String(value)
  if (kind === 'volume') return fieldVolume(value, units)
  return kind === 'percent' ? fieldPercent(value) : String(value)
}

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

/** A new thing's fields as a book keeps them: nested, and nothing that is not known. */
export function thingFrom(values: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const thing: Record<string, unknown> = {}
  for (const [path, value] of Object.entries(values)) if (value !== null) setAt(thing, path.split('.'), value)
  return thing
}

export interface Change {
  changes: Record<string, unknown>
  was: Record<string, unknown>
}

/** What a form changes of a thing, field by field of the first level, and what each was; null where nothing changed. */
export function changeOf(before: Thing, values: Readonly<Record<string, unknown>>): Change | null {
  const after = structuredClone(before) as Record<string, unknown>
  for (const [path, value] of Object.entries(values)) setAt(after, path.split('.'), value)
  const changes: Record<string, unknown> = {}
  const was: Record<string, unknown> = {}
  for (const key of new Set(Object.keys(values).map((path) => path.split('.')[0]!))) {
    const [old, now] = [before[key] ?? null, pruned(after[key])]
    if (JSON.stringify(old) === JSON.stringify(now)) continue
    changes[key] = now
    was[key] = old
  }
  return Object.keys(changes).length === 0 ? null : { changes, was }
}

/** Without the nulls inside; an object that has nothing left is itself null. */
function pruned(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value ?? null
  const kept = Object.entries(value).flatMap(([key, inner]) => {
    const plain = pruned(inner)
    return plain === null ? [] : [[key, plain] as const]
  })
  return kept.length === 0 ? null : Object.fromEntries(kept)
}

const valueAt = (thing: Readonly<Record<string, unknown>>, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], thing)

function setAt(thing: Record<string, unknown>, [key, ...rest]: string[], value: unknown): void {
  if (rest.length === 0) {
    thing[key!] = value
    return
  }
  const inner = { ...(thing[key!] as Record<string, unknown> | undefined) }
  setAt(inner, rest, value)
  thing[key!] = inner
}

/** The faults of problem details about a set-up entry, at the form's fields; `rest` has no field here. */
export function faultsAtFields(
  errors: readonly { pointer: string; found: string; expected: string }[],
  fields: readonly ThingField[],
) {
  const at: Record<string, Fault> = {}
  const rest: string[] = []
  for (const { pointer, found, expected } of errors) {
    const path = pointer.replace(/^\/changes\//, '').replaceAll('/', '.')
    if (fields.some((field) => field.path === path)) at[path] = { found, expected }
    else rest.push(say('{pointer}: found {found}, expected {expected}', { pointer, found, expected }))
  }
  return { at, rest }
}

/** A name as an id: letters and digits of ASCII, hyphens between; with a number where another thing has it. */
export function idFor(name: string, taken: ReadonlySet<string>, fallback: string): string {
  const plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()
  const slug =
    plain
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 60) || fallback
  if (!taken.has(slug)) return slug
  for (let n = 2; ; n++) if (!taken.has(`${slug}-${n}`)) return `${slug}-${n}`
}
