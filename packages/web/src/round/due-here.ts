import type { CalendarLine } from '../api/guidance.ts'
import type { Step } from './use-steps.ts'

/** A test that is due at a sump. */
export type DueTest = Pick<CalendarLine, 'test' | 'name'>

/** What is due at a stop, as its page shows it. */
export interface DueHere {
  step: Step
  due: readonly DueTest[]
  /** Whether its row stands below the refractometer: it was found due once somebody was there. */
  isBelow: boolean
}

/**
 * What is due, as far as it can be shown without moving anything under a thumb. The calendar may come late, and may be other after another
 * phone has written: fields that somebody fills in stay as they were when they were opened, a row that is there at the refractometer stays, and one
 * that is found due only then comes below it.
 *
 * @param before as it was shown last; null at first
 * @param step where somebody is now
 * @param found due, as the calendar says now
 * @param hasRow whether the row is there anyway, since something was tested
 */
export function dueHere(before: DueHere | null, step: Step, found: readonly DueTest[], hasRow: boolean): DueHere {
  const isBelow = before?.isBelow ?? false
  if (before === null || before.step !== step) return { step, due: found, isBelow }
  const isKept = step === 'tests' || (step === 'brix' && before.due.length > 0)
  if (isKept) return before
  return { step, due: found, isBelow: isBelow || (step === 'brix' && found.length > 0 && !hasRow) }
}
