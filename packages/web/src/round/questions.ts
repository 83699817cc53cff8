import { type Figure, message, type Reader, say, sayNumber, sayPercent, sayVolume } from '@sumpbook/fluid'
import type { RecipeBench, SumpNow } from '../api/types.ts'
import { sayExpected } from './expected.ts'
import type { LevelSeen } from './read-level.ts'
import type { Typed } from './typed.ts'

/** What is possible but hardly so: asked once. */
export interface FieldQuestion {
  field: 'level' | 'brix'
  /** Its place in the entry. */
  pointer: '/volume' | '/level' | '/brix'
  /** The text it is asked of; the answer holds for that text alone. */
  text: string
  question: string
  /** What the person says where it is right all the same. */
  yes: string
}

/** A hand refractometer's coolant readings stay far under this (common practice). */
const unusualBrix = 25
/** A strength this many times the target is more often a slip than a strength. */
const unusualStrength = 3

const isRight = message('Yes, that is right')

interface Found {
  level: LevelSeen | null
  brix: number | null
  concentration: Figure | null
  /** Whether the reading is far from what was expected. */
  isFar: boolean
}

/** What is asked once of what was typed, at each field the question that says most. */
export function questionsOf(
  typed: Typed,
  { level, brix, concentration, isFar }: Found,
  { bench, expected }: SumpNow,
  reader: Reader,
): FieldQuestion[] {
  const questions: FieldQuestion[] = []
  if (
    level !== null &&
    typed.levelBy !== 'mark' &&
    bench.fillVolume !== null &&
    level.litres > 1.005 * bench.fillVolume
  ) {
    const pointer = 'volume' in level.entry ? '/volume' : '/level'
    const question = say('{volume} is above the full mark, {mark}. Is that right?', {
      volume: sayVolume(level.litres, reader),
      mark: sayVolume(bench.fillVolume, reader),
    })
    questions.push({ field: 'level', pointer, text: typed.level, question, yes: say(isRight) })
  }
  const ofBrix = brixQuestion(brix, { concentration, expected: isFar ? expected : null }, bench, reader)
  if (ofBrix !== null) questions.push({ field: 'brix', pointer: '/brix', text: typed.brix, ...ofBrix })
  return questions
}

/** One question is enough: the one that says most. */
function brixQuestion(
  brix: number | null,
  { concentration, expected }: Pick<SumpNow, 'concentration' | 'expected'>,
  { target }: RecipeBench,
  reader: Reader,
): Pick<FieldQuestion, 'question' | 'yes'> | null {
  if (brix === null) return null
  const read = sayNumber(brix, 1)
  if (expected !== null) {
    const question = say('{read} is far from the {expected} expected: read again?', {
      read,
      expected: sayExpected(expected),
    })
    return { question, yes: say('It reads {read}', { read }) }
  }
  if (brix > unusualBrix) {
    return {
      question: say('{read} °Brix is far above what a coolant reads. Is that right?', { read }),
      yes: say(isRight),
    }
  }
  if (concentration !== null && target !== null && concentration.mean > unusualStrength * target) {
    const question = say('That would be {strength}, more than three times the target of {target}. Is that right?', {
      strength: sayPercent(concentration.mean, reader),
      target: sayPercent(target, reader),
    })
    return { question, yes: say(isRight) }
  }
  return null
}
