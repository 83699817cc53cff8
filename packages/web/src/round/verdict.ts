import { type Advice, advise, type Figure, type Reader, standingAfter, trueMarks, volumeToPour } from '@sumpbook/fluid'
import type { SumpNow } from '../api/types.ts'
import { weighedWith } from './expected.ts'
import { notesOf } from './notes.ts'
import { type FieldQuestion, questionsOf } from './questions.ts'
import { type LevelSeen, readLevel, seenVolume } from './read-level.ts'
import { readBrix, standsWords, strengthOf } from './read-strength.ts'
import type { FieldFault, Typed } from './typed.ts'

/** What follows from what was typed, worked out on the device. */
export interface Verdict {
  level: LevelSeen | null
  brix: number | null
  concentration: Figure | null
  /** "at the foot of its band of 6–10 %". Empty without a strength or a band. */
  stands: string
  /** Null until there is a strength, and while a record of the sump is in doubt: what is read now helps to settle it. */
  advice: Advice | null
  faults: FieldFault[]
  /** Not yet answered. */
  questions: FieldQuestion[]
  /** What to know beside the advice. */
  notes: string[]
}

/**
 * The verdict on what was typed at one sump: strength, recipe and words at once, by the same computation as the
 * server's. A reading that fits what the records lead to expect is weighed with it; one that is far off is asked about
 * once, and then counts alone. Text that does not parse, or cannot be, is a fault at its field; what is hardly so is a question.
 *
 * @param now milliseconds since 1970: what is expected holds for the hours after it was worked out
 */
export function verdictOf(typed: Typed, sump: SumpNow, reader: Reader, now: number): Verdict {
  const level = readLevel(typed, sump.bench, reader)
  const brix = readBrix(typed.brix, sump.bench)
  const seenLevel = 'seen' in level ? level.seen : null
  const seenBrix = 'seen' in brix ? brix.seen : null
  const strength = seenBrix === null ? null : strengthOf(seenBrix, sump.bench)
  const alone = standingAfter([
    {
      kind: 'reading',
      concentration: strength !== null && 'mean' in strength ? strength : null,
      volume: seenLevel === null ? null : seenVolume(seenLevel, typed, sump),
    },
  ])
  const weighed = seenBrix === null ? null : weighedWith(seenBrix, sump, now)
  const concentration = weighed?.outcome === 'fits' ? weighed.concentration : alone.concentration
  const bench = trueMarks(sump.bench, sump.mark)
  const known = sump.volume === null ? null : volumeToPour(sump.volume, sump.mark, bench)
  const volume = seenLevel === null ? known : alone.volume
  const faults = [level, brix].flatMap((read) => ('fault' in read ? [read.fault] : []))
  const isAdvised = seenBrix !== null && faults.length === 0 && sump.doubts.length === 0
  const found = { level: seenLevel, brix: seenBrix, concentration, isFar: weighed?.outcome === 'far' }
  return {
    level: seenLevel,
    brix: seenBrix,
    concentration,
    stands: standsWords(concentration, sump.bench),
    advice: isAdvised ? advise({ volume, concentration }, bench, reader) : null,
    faults,
    questions: questionsOf(typed, found, sump, reader).filter(({ pointer, text }) => typed.confirmed[pointer] !== text),
    notes: notesOf(typed, { seenLevel, strength, known }, sump, reader),
  }
}
