import {
  diagnose,
  readFields,
  readSigns,
  type SignId,
  type SymptomReadings,
  say,
  sayChance,
  sayDiagnosis,
} from '@sumpbook/fluid'
import { z } from 'zod'
import { measured } from '../schema/entries/index.ts'
import { classOfValue, notNegative, percent } from '../schema/values.ts'
import { calculation } from './calculation.ts'
import { given } from './given.ts'

const { level, ...others } = measured
const readings = z.strictObject({
  ...others,
  concentration: classOfValue(percent)
    .optional()
    .describe('percent by refractometer, where °Brix is made percent already'),
  level: z
    .union([z.enum(['low', 'right', 'high']), level.unwrap()])
    .optional()
    .describe('a word, or millimetres'),
})

const between = z
  .strictObject({ low: notNegative.optional(), target: notNegative.optional(), high: notNegative.optional() })
  .refine(({ low, target, high }) => (low ?? 0) <= (target ?? low ?? 0) && (target ?? low ?? 0) <= (high ?? Infinity), {
    error: 'low ≤ target ≤ high',
  })
const limits = z.strictObject(Object.fromEntries(readFields.map((field) => [field, between.optional()])))

/** Signs and readings to what may be behind them. */
export const diagnoseCalculation = calculation({
  name: 'diagnose',
  summary: 'what may be behind signs and readings, which test would tell most, and what must stop at once',
  input: z.strictObject({
    readings: readings.default({}).describe('as in a reading’s entry, and concentration'),
    limits: limits.default({}).describe('low, target, high of each reading; volume and level have the mark’s'),
    signs: z.array(z.string()).default([]).describe('words of the published list'),
    absent: z.array(z.string()).default([]).describe('signs that were looked for and are not there'),
    previous: readings.default({}).describe('earlier readings, best those of the fresh charge'),
    brixFactor: z.number().min(0.1).max(20).optional().describe('percent per °Brix'),
  }),
  run: ({ readings, limits, signs, absent, previous, brixFactor }) => {
    const [seen, missed] = [readSigns(signs), readSigns(absent)]
    const level = levelAsSigns(readings.level)
    const diagnosis = diagnose({
      readings: figuresOf(readings),
      limits: given(limits),
      signs: [...seen.signs, ...level.signs],
      absent: [...missed.signs, ...level.absent],
      previous: figuresOf(previous),
      ...(brixFactor === undefined ? {} : { brixFactor }),
    })
    const said = sayDiagnosis(
      diagnosis,
      { units: 'metric' },
      { notUnderstood: [...seen.notUnderstood, ...missed.notUnderstood] },
    )
    const hours = readings.machineHours === undefined ? [] : [say('Machine hours are not weighed.')]
    return { ...said, notes: [...said.notes, ...hours] }
  },
  say: ({ causes, nextCheck, stop, notes, cautions }) => [
    ...stop.map((text) => say('At once: {what}', { what: text })),
    ...causes.flatMap(({ cause, says, probability, because, checks, remedies }) => [
      `${cause}, ${sayChance(probability)}: ${says}`,
      ...[...because, ...checks, ...remedies].map((sentence) => `  ${sentence}`),
    ]),
    ...(nextCheck === null ? [] : [say('Next: {what}', { what: nextCheck.text })]),
    ...notes,
    ...cautions,
  ],
})

type Given = z.infer<typeof readings>

/** Without machine hours, and without a level that is a word. */
function figuresOf({ machineHours: _, level, ...figures }: Given): SymptomReadings {
  return given({ ...figures, level: typeof level === 'string' ? undefined : level })
}

function levelAsSigns(level: Given['level']): { signs: SignId[]; absent: SignId[] } {
  if (typeof level !== 'string') return { signs: [], absent: [] }
  const both: SignId[] = ['level low', 'level high']
  const signs = both.filter((sign) => sign === `level ${level}`)
  return { signs, absent: both.filter((sign) => !signs.includes(sign)) }
}
