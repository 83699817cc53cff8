import type { Leak } from './network.ts'

/** A figure, or a class of figures as strips and slides give it. */
export type ReadValue = number | { low: number; high: number } | { below: number } | { atLeast: number }

/** What can be read of a sump, named as in the journal; units of the journal. */
export const readFields = [
  'concentration',
  'brix',
  'titration',
  'ph',
  'hardness',
  'chloride',
  'conductivity',
  'sulfate',
  'nitrate',
  'nitrite',
  'temperature',
  'bacteria',
  'fungi',
  'trampOil',
  'dissolvedOxygen',
  'level',
  'volume',
] as const
export type ReadField = (typeof readFields)[number]
export type Readings = { [Field in ReadField]?: ReadValue | undefined }

/** What a quantity is kept between; an end that is missing is open. */
export interface ReadLimits {
  low?: number | undefined
  target?: number | undefined
  high?: number | undefined
  /** Up to here a high value is known not to be there; between here and `high` it says nothing. `high` itself without it. */
  clear?: number | undefined
}
export type Limits = { [Field in ReadField]?: ReadLimits | undefined }

/** Something that readings can say, beside signs. */
export interface ReadFinding {
  id: string
  leak: Leak
}

/** Readings beyond a limit: which, on which side, and what that is called. */
export const beyondLimit = [
  { id: 'weak', field: 'concentration', side: 'low', leak: 'now and then' },
  { id: 'rich', field: 'concentration', side: 'high', leak: 'now and then' },
  { id: 'low pH', field: 'ph', side: 'low', leak: 'hardly ever' },
  { id: 'high pH', field: 'ph', side: 'high', leak: 'hardly ever' },
  { id: 'hard', field: 'hardness', side: 'high', leak: 'hardly ever' },
  { id: 'soft', field: 'hardness', side: 'low', leak: 'now and then' },
  { id: 'chloride high', field: 'chloride', side: 'high', leak: 'hardly ever' },
  { id: 'conductivity high', field: 'conductivity', side: 'high', leak: 'now and then' },
  { id: 'sulfate high', field: 'sulfate', side: 'high', leak: 'hardly ever' },
  { id: 'nitrate high', field: 'nitrate', side: 'high', leak: 'now and then' },
  { id: 'nitrite high', field: 'nitrite', side: 'high', leak: 'hardly ever' },
  { id: 'temperature high', field: 'temperature', side: 'high', leak: 'hardly ever' },
  { id: 'bacteria high', field: 'bacteria', side: 'high', leak: 'hardly ever' },
  { id: 'fungi high', field: 'fungi', side: 'high', leak: 'hardly ever' },
  { id: 'tramp oil high', field: 'trampOil', side: 'high', leak: 'hardly ever' },
  { id: 'oxygen low', field: 'dissolvedOxygen', side: 'low', leak: 'hardly ever' },
] as const satisfies readonly (ReadFinding & { field: ReadField; side: Side })[]

/** What two readings say together, or one beside an earlier one. */
export const fromSeveral = [
  { id: 'low and rich', leak: 'hardly ever' },
  { id: 'low and right', leak: 'hardly ever' },
  { id: 'low and weak', leak: 'hardly ever' },
  { id: 'high and weak', leak: 'hardly ever' },
  { id: 'high and rich', leak: 'hardly ever' },
  { id: 'falling pH', leak: 'now and then' },
  { id: 'nitrite rising', leak: 'hardly ever' },
  { id: 'refractometer above titration', leak: 'hardly ever' },
  { id: 'titration above refractometer', leak: 'hardly ever' },
  { id: 'rust though the reading is right', leak: 'hardly ever' },
] as const satisfies readonly ReadFinding[]

export type Side = 'low' | 'high'

/** Whether a reading lies beyond a limit; null where its class reaches over it. A figure on the limit is inside. */
export function isBeyond(value: ReadValue, side: Side, limit: number): boolean | null {
  if (typeof value === 'number') return side === 'low' ? value < limit : value > limit
  const { from, to } = endsOf(value)
  if (side === 'low') return to <= limit ? true : from >= limit ? false : null
  return from >= limit ? true : to <= limit ? false : null
}

/** The middle of a class with two ends; null where one is missing. */
export function middleOf(value: ReadValue | undefined): number | null {
  if (value === undefined) return null
  if (typeof value === 'number') return value
  return 'low' in value ? (value.low + value.high) / 2 : null
}

function endsOf(value: Exclude<ReadValue, number>): { from: number; to: number } {
  if ('low' in value) return { from: value.low, to: value.high }
  return 'below' in value
    ? { from: Number.NEGATIVE_INFINITY, to: value.below }
    : { from: value.atLeast, to: Number.POSITIVE_INFINITY }
}
