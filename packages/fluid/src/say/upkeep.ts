import type { Punctuality } from '../upkeep/punctuality.ts'
import { say } from '../words/index.ts'

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
  const stands = say('{rhythm}, {last}; {due}.', {
    rhythm: say('{days, plural, one {Every day} other {Every # days}}', { days: everyDays }),
    last: lastWords(sinceDays),
    due: dueWords(dueInDays),
  })
  if (slipping === true) return `${stands} ${say('It comes later each time.')}`
  return times >= 3 && late > times / 2
    ? `${stands} ${say('Late {late} of the last {times} times.', { late, times })}`
    : stands
}

function lastWords(days: number | null): string {
  if (days === null) return say('not written down yet')
  return days === 0 ? say('done today') : say('last done {days, plural, one {# day} other {# days}} ago', { days })
}

function dueWords(days: number): string {
  if (days === 0) return say('due today')
  if (days === 1) return say('due tomorrow')
  return days < 0
    ? say('{days, plural, one {# day} other {# days}} over', { days: -days })
    : say('due in {days, plural, one {# day} other {# days}}', { days })
}
