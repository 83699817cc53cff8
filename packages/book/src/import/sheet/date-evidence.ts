import { say } from '@sumpbook/fluid'
import type { Question } from '../sheet-types.ts'
import type { DateOrder } from './date-order.ts'
import { type DateText, exists, inOrder, readDateText } from './dates.ts'

/** What the whole column of dates says about the order of its numbers. */
export interface DateEvidence {
  /** Every date with slashes or dashes. */
  numbers: number
  /** Dates that are days of the calendar in this order alone. */
  only: Record<'dmy' | 'mdy', number>
  /** Dates that would be two different days. */
  either: number
  /** Dates whose own form settles them. */
  dotted: number
  settled: number
  /** One that could be either, for the question. */
  example: string | null
}

export const noDates = (): DateEvidence => ({
  numbers: 0,
  only: { dmy: 0, mdy: 0 },
  either: 0,
  dotted: 0,
  settled: 0,
  example: null,
})

/** Takes one more cell of the column into account. */
export function weighDate(evidence: DateEvidence, text: string): void {
  const read = readDateText(text)
  if (read === null) return
  if (read.kind === 'numbers') weighNumbers(evidence, read, text)
  else if (read.kind === 'wall' && read.form === 'dotted') evidence.dotted += 1
  else evidence.settled += 1
}

function weighNumbers(evidence: DateEvidence, read: Extract<DateText, { kind: 'numbers' }>, text: string): void {
  const [dmy, mdy] = [inOrder(read, 'dmy'), inOrder(read, 'mdy')]
  const [asDmy, asMdy] = [dmy !== null && exists(dmy), mdy !== null && exists(mdy)]
  evidence.numbers += 1
  if (asDmy && !asMdy) evidence.only.dmy += 1
  if (asMdy && !asDmy) evidence.only.mdy += 1
  if (asDmy && asMdy && dmy!.day !== mdy!.day) {
    evidence.either += 1
    evidence.example ??= text
  }
}

/**
 * The order in which the column's numbers are read: what a person said, else what the heading announces, else the one
 * that some date allows alone. A question where none does, or where two dates contradict each other.
 */
export function settleDates(
  { numbers, only, either, dotted, settled, example }: DateEvidence,
  said: DateOrder | undefined,
): { order: DateOrder | null; question: Question | null } {
  if (said !== undefined) return { order: said, question: null }
  if (numbers === 0) return { order: dotted > 0 ? 'dmy' : settled > 0 ? 'ymd' : null, question: null }
  if (only.dmy > 0 && only.mdy > 0) {
    return {
      order: null,
      question: ask(
        say(
          '{dmy} of the dates can only be day first and {mdy} only month first. Which is right? The others will be faults.',
          { dmy: only.dmy, mdy: only.mdy },
        ),
      ),
    }
  }
  if (only.dmy > 0) return { order: 'dmy', question: null }
  if (only.mdy > 0) return { order: 'mdy', question: null }
  if (either === 0) return { order: 'dmy', question: null }
  return {
    order: null,
    question: ask(say('Is {example} day first or month first? No date of the column tells.', { example: example! })),
  }
}

const ask = (question: string): Question => ({ pointer: '/dates', question, choices: ['dmy', 'mdy'] })
