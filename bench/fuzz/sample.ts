import type { Dice } from './mutate.ts'

/** A JSON Schema as the API's description has it. */
export interface Schema {
  type?: string | string[]
  enum?: unknown[]
  const?: unknown
  anyOf?: Schema[]
  oneOf?: Schema[]
  allOf?: Schema[]
  properties?: Record<string, Schema>
  required?: string[]
  items?: Schema | Schema[]
  prefixItems?: Schema[]
  minimum?: number
  exclusiveMinimum?: number
  maximum?: number
  minLength?: number
  format?: string
  default?: unknown
  $ref?: string
}

/** Values that break what was written for others. */
export const strange: readonly unknown[] = [
  null,
  true,
  false,
  0,
  -0,
  -1,
  1.5,
  1e15,
  1e308,
  2 ** 53 + 2,
  '',
  ' ',
  'x',
  's1',
  '0',
  '-1',
  'NaN',
  'null',
  '\u0000',
  '\ud800',
  'é'.repeat(300),
  '../../etc/passwd',
  "' or 1=1 --",
  '%00',
  '<script>',
  '{{7*7}}',
  '#{7*7}',
  '__proto__',
  'constructor',
  '2026-13-45',
  '9999-12-31T23:59:59Z',
  '2026-03-03T09:30:00+99:99',
  [],
  {},
  [[]],
  [null],
  { __proto__: null },
  { constructor: 1 },
  { toString: 1 },
  { length: -1 },
  'a'.repeat(20_000),
  [1, 2, 3],
  ['', ''],
]

/** Ids and instants that the served book knows, so that some requests get far. */
const known = [
  's1',
  'f1',
  'tap',
  'di',
  '00000000-0000-4000-8000-000000000001',
  '2026-03-03T09:30:00Z',
  '2026-03-03',
  'water',
  'sump',
]

/** A value that fits a schema mostly, and now and then does not. `odd`: how seldom it does not fit, one in so many. */
export function sample(schema: Schema, dice: Dice, odd: number, depth = 0): unknown {
  if (dice(odd) === 0) return strange[dice(strange.length)]
  if (depth > 6) return null
  const { type, anyOf, oneOf, allOf } = schema
  const either = anyOf ?? oneOf
  if (schema.const !== undefined) return schema.const
  if (schema.enum !== undefined) return schema.enum[dice(schema.enum.length)]
  if (either !== undefined && either.length > 0) return sample(either[dice(either.length)]!, dice, odd, depth + 1)
  if (allOf !== undefined) return Object.assign({}, ...allOf.map((part) => sample(part, dice, odd, depth + 1)))
  const one = Array.isArray(type) ? type[dice(type.length)] : type
  switch (one ?? (schema.properties === undefined ? 'string' : 'object')) {
    case 'object':
      return Object.fromEntries(
        Object.entries(schema.properties ?? {})
          .filter(([key]) => schema.required?.includes(key) === true || dice(3) === 0)
          .map(([key, inner]) => [key, sample(inner, dice, odd, depth + 1)]),
      )
    case 'array': {
      const tuple = schema.prefixItems ?? (Array.isArray(schema.items) ? schema.items : null)
      if (tuple !== null) return tuple.map((inner) => sample(inner, dice, odd, depth + 1))
      return Array.from({ length: dice(4) }, () => sample((schema.items as Schema) ?? {}, dice, odd, depth + 1))
    }
    case 'integer':
      return Math.floor(number(schema, dice))
    case 'number':
      return number(schema, dice)
    case 'boolean':
      return dice(2) === 0
    case 'null':
      return null
    default:
      if (schema.format === 'uuid') return `00000000-0000-4000-8000-${String(dice(60)).padStart(12, '0')}`
      if (schema.format === 'date-time') return `2026-03-0${1 + dice(3)}T09:${10 + dice(50)}:00Z`
      return known[dice(known.length)]
  }
}

function number({ minimum, exclusiveMinimum, maximum }: Schema, dice: Dice): number {
  const low = Math.max(minimum ?? exclusiveMinimum ?? 0, -10) + (exclusiveMinimum === undefined ? 0 : 0.001)
  const high = Math.min(maximum ?? 1000, 1e6)
  return [low, high, low + (high - low) * (dice(1000) / 1000)][dice(3)]!
}
