import type { ParallelPlan } from '../cleanout/parallel.ts'
import { sayHours } from './cleanout-sheet.ts'
import { sayCount } from './phrases.ts'
import type { Reader } from './units.ts'

/** What machines side by side come to, a sentence or two; how good the plan is stands with it. */
export function sayParallel(
  { jobs, finish, downtime, lowerBound, exact }: ParallelPlan,
  reader: Pick<Reader, 'locale'> = {},
): string {
  const end = `${sayCount(jobs.length, 'machine is', 'machines are')} done after ${sayHours(finish, reader)}; together they stand for ${sayHours(downtime, reader)}.`
  if (jobs.length === 1) return end
  return exact
    ? `${end} No order ends earlier.`
    : `${end} Not every order was looked at: none ends before ${sayHours(lowerBound, reader)}.`
}
