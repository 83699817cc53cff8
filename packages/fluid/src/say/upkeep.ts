import type { Punctuality } from '../upkeep/punctuality.ts'
import { sayCount } from './phrases.ts'

/** How a task stands. */
export interface SaidUpkeep extends Punctuality {
  everyDays: number
  /** Days since it was done last; null where it never was. */
  sinceDays: number | null
  /** Days until it is due, negative where it is late. */
  dueInDays: number
}

/** When a task was done, when it is due, and whether it slips, in a sentence or two. */
export function sayUpkeep({ everyDays, sinceDays, dueInDays, slipping, times, late }: SaidUpkeep): string {
  const rhythm = everyDays === 1 ? 'Every day' : `Every ${everyDays} days`
  const last =
    sinceDays === null
      ? 'not written down yet'
      : sinceDays === 0
        ? 'done today'
        : `last done ${sayCount(sinceDays, 'day', 'days')} ago`
  const slips =
    slipping === true
      ? ' It comes later each time.'
      : times >= 3 && late > times / 2
        ? ` Late ${late} of the last ${times} times.`
        : ''
  return `${rhythm}, ${last}; ${dueWords(dueInDays)}.${slips}`
}

function dueWords(days: number): string {
  if (days === 0) return 'due today'
  if (days === 1) return 'due tomorrow'
  return days < 0 ? `${sayCount(-days, 'day', 'days')} over` : `due in ${sayCount(days, 'day', 'days')}`
}
