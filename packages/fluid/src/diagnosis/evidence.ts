import {
  beyondLimit,
  isBeyond,
  type Limits,
  middleOf,
  type ReadField,
  type Readings,
  type ReadValue,
  type Side,
} from './readings.ts'
import type { SignId } from './signs.ts'

/** What is known of a sump that somebody asks about. */
export interface Symptoms {
  readings: Readings
  limits: Limits
  /** Signs that are there. */
  signs: readonly SignId[]
  /** Signs that somebody looked for and did not find. */
  absent?: readonly SignId[]
  /** Earlier readings at about the same strength, best those of the fresh charge. */
  previous?: Readings
  /** Percent per °Brix, where the strength was read as °Brix. */
  brixFactor?: number
}

/** Where a finding comes from, for the sentence about it. */
export type Ground =
  | { kind: 'sign' }
  | { kind: 'limit'; field: ReadField; value: ReadValue; side: Side; limit: number }
  | { kind: 'change'; field: 'ph' | 'nitrite'; from: number; to: number }
  | { kind: 'level'; level: Side; strength: 'rich' | 'right' | 'weak' }
  | { kind: 'methods'; refractometer: number; titration: number }
  | { kind: 'yet'; strength: number }

/** One thing found, or looked for and not found. */
export interface Evidence {
  finding: string
  present: boolean
  ground: Ground
}

/** A fall of the pH of more than this from the fresh fill asks for action: DGUV Regel 109-003, Annex 3. */
export const phFall = 0.5
/** A rise that strips can see: common practice, no source. */
const nitriteRise = 5
/** Methods that differ by more than this share of the greater disagree; so does a strength from its target beside a level: common practice, no source. */
const [methodsDiffer, strengthDiffers] = [0.2, 0.1]

/** Readings and signs as findings, each once; what the limits given do not let one judge is named. */
export function evidenceOf(symptoms: Symptoms): { evidence: Evidence[]; unjudged: ReadField[] } {
  const { readings, limits, signs, absent = [], previous = {} } = symptoms
  const strength = strengthsOf(symptoms)
  const judged: Readings = { ...readings, concentration: strength.lower ?? undefined }
  const found: Evidence[] = [
    ...signs.map((finding) => ({ finding, present: true, ground: { kind: 'sign' } as const })),
    ...absent
      .filter((sign) => !signs.includes(sign))
      .map((finding) => ({ finding, present: false, ground: { kind: 'sign' } as const })),
    ...beyondLimit.flatMap(({ id, field, side }) => byLimit(id, field, side, judged, limits)),
    ...levelEvidence(judged, limits),
    ...changes(readings, previous),
    ...methodEvidence(strength),
  ]
  if (signs.some((sign) => sign === 'rust on parts' || sign === 'rust on the machine'))
    found.push(...rustYet(strength, limits))
  return { evidence: eachOnce(found), unjudged: unjudgedOf(judged, symptoms) }
}

interface Strengths {
  refractometer: number | null
  titration: number | null
  /** The lower of the two: the safer to act on. A class where only a class was given. */
  lower: ReadValue | null
}

function strengthsOf({ readings: { concentration, brix, titration }, brixFactor }: Symptoms): Strengths {
  const byBrix = middleOf(brix)
  const refractometer =
    middleOf(concentration) ?? (byBrix !== null && brixFactor !== undefined ? byBrix * brixFactor : null)
  const titrated = middleOf(titration)
  const known = [refractometer, titrated].filter((value) => value !== null)
  const classGiven = titration === undefined ? concentration : undefined
  const lower = classGiven ?? (known.length === 0 ? (titration ?? null) : Math.min(...known))
  return { refractometer, titration: titrated, lower }
}

function byLimit(finding: string, field: ReadField, side: Side, readings: Readings, limits: Limits): Evidence[] {
  const [value, limit] = [readings[field], limits[field]?.[side]]
  if (value === undefined || limit === undefined) return []
  const present = isBeyond(value, side, limit)
  const { clear = limit } = limits[field]!
  if (present === false && side === 'high' && isBeyond(value, side, clear) !== false) return []
  return present === null ? [] : [{ finding, present, ground: { kind: 'limit', field, value, side, limit } }]
}

/** Level beside strength tells what left the sump, or came in. */
function levelEvidence(readings: Readings, limits: Limits): Evidence[] {
  const field = readings.volume === undefined || limits.volume === undefined ? 'level' : 'volume'
  const sides = [
    ...byLimit('level low', field, 'low', readings, limits),
    ...byLimit('level high', field, 'high', readings, limits),
  ]
  const level = sides.find(({ present }) => present)
  const strength = besideTarget(readings, limits)
  if (level === undefined || strength === null) return sides
  const side: Side = level.finding === 'level low' ? 'low' : 'high'
  // A full sump of the right strength says nothing.
  if (side === 'high' && strength === 'right') return sides
  const ground = { kind: 'level', level: side, strength } as const
  return [...sides, { finding: `${side} and ${strength}`, present: true, ground }]
}

function besideTarget({ concentration }: Readings, { concentration: limit = {} }: Limits) {
  const value = middleOf(concentration)
  const { low, target, high } = limit
  if (value === null) return null
  const floor = target === undefined ? low : (1 - strengthDiffers) * target
  const ceiling = target === undefined ? high : (1 + strengthDiffers) * target
  if (floor !== undefined && value < floor) return 'weak'
  if (ceiling !== undefined && value > ceiling) return 'rich'
  return floor === undefined || ceiling === undefined ? null : 'right'
}

function changes({ ph, nitrite }: Readings, previous: Readings): Evidence[] {
  const found: Evidence[] = []
  const [phFrom, phTo] = [middleOf(previous.ph), middleOf(ph)]
  if (phFrom !== null && phTo !== null) {
    // To the tenth of a unit, as it is read: 9.0 − 8.5 is no more than 0.5.
    const present = Math.round(10 * (phFrom - phTo)) > 10 * phFall
    found.push({ finding: 'falling pH', present, ground: { kind: 'change', field: 'ph', from: phFrom, to: phTo } })
  }
  const [from, to] = [middleOf(previous.nitrite), middleOf(nitrite)]
  if (from !== null && to !== null) {
    const present = to - from >= nitriteRise
    found.push({ finding: 'nitrite rising', present, ground: { kind: 'change', field: 'nitrite', from, to } })
  }
  return found
}

function methodEvidence({ refractometer, titration }: Strengths): Evidence[] {
  if (refractometer === null || titration === null) return []
  const differ = methodsDiffer * Math.max(refractometer, titration)
  const ground = { kind: 'methods', refractometer, titration } as const
  return [
    { finding: 'refractometer above titration', present: refractometer - titration > differ, ground },
    { finding: 'titration above refractometer', present: titration - refractometer > differ, ground },
  ]
}

/** Rust at a strength that reads right points elsewhere than at the strength. */
function rustYet({ lower, titration }: Strengths, { concentration }: Limits): Evidence[] {
  const [value, low] = [middleOf(lower ?? undefined), concentration?.low]
  if (value === null || low === undefined || titration !== null || value < low) return []
  return [{ finding: 'rust though the reading is right', present: true, ground: { kind: 'yet', strength: value } }]
}

/** A sign that is seen is there, whatever a reading of the same says. */
function eachOnce(found: readonly Evidence[]): Evidence[] {
  const byFinding = new Map<string, Evidence>()
  for (const one of found) {
    const before = byFinding.get(one.finding)
    if (before === undefined || (one.present && !before.present)) byFinding.set(one.finding, one)
  }
  return [...byFinding.values()]
}

/** Readings without the limit, the factor or the mark that they would be held against. */
function unjudgedOf(judged: Readings, { readings, limits, brixFactor }: Symptoms): ReadField[] {
  const hasLimit = (field: ReadField) => limits[field]?.low !== undefined || limits[field]?.high !== undefined
  const given = (Object.keys(readings) as ReadField[]).filter((field) => readings[field] !== undefined)
  return given.filter((field) => {
    if (field === 'brix') return brixFactor === undefined || !hasLimit('concentration')
    if (field === 'titration') return !hasLimit('concentration')
    if (field === 'concentration') return judged.concentration === undefined || !hasLimit('concentration')
    return !hasLimit(field)
  })
}
