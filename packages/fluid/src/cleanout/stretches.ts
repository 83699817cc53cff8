import type { ParallelJob, Stretch } from './parallel.ts'
import type { CleanoutSheet, CleanoutStep } from './sheet.ts'

/** What cleanouts side by side have to share. */
export const sharedThings = { person: 'person', pumpOut: 'pump-out' } as const

/**
 * A sheet as stretches for {@link parallelPlan}: draining keeps a person and the pump-out busy, cleaner circulates alone, all else takes a
 * person. Steps that need the same and follow each other are one stretch.
 */
export function stretchesOf(id: string, { steps }: Extract<CleanoutSheet, { outcome: 'sheet' }>): ParallelJob {
  const stretches: Stretch[] = []
  for (const step of steps.filter(({ stands }) => stands)) {
    const needs = needsOf(step)
    const last = stretches.at(-1)
    if (last !== undefined && JSON.stringify(last.needs) === JSON.stringify(needs)) {
      stretches[stretches.length - 1] = { ...last, hours: last.hours + step.hours }
    } else stretches.push({ name: step.id, hours: step.hours, needs })
  }
  return { id, stretches }
}

function needsOf({ stage, attended }: CleanoutStep): Stretch['needs'] {
  const person = attended ? { [sharedThings.person]: 1 } : {}
  const isDrain = stage === 'drain' || stage === 'cleaner-drain' || stage === 'rinse'
  return isDrain ? { ...person, [sharedThings.pumpOut]: 1 } : person
}
