import type { ParallelPlan } from '../cleanout/parallel.ts'
import { say } from '../words/index.ts'
import { sayHours } from './cleanout-sheet.ts'
import type { Reader } from './units.ts'

/** What machines side by side come to, a sentence or two; how good the plan is stands with it. */
export function sayParallel(
  { jobs, finish, downtime, lowerBound, exact }: ParallelPlan,
  reader: Pick<Reader, 'locale'> = {},
): string {
  const end = say(
    '{machines, plural, one {# machine is} other {# machines are}} done after {finish}; together they stand for {downtime}.',
    { machines: jobs.length, finish: sayHours(finish, reader), downtime: sayHours(downtime, reader) },
  )
  if (jobs.length === 1) return end
  return exact
    ? `${end} ${say('No order ends earlier.')}`
    : `${end} ${say('Not every order was looked at: none ends before {hours}.', { hours: sayHours(lowerBound, reader) })}`
}
