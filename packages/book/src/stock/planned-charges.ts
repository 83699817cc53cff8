import { dayNumber, isDay, type PlannedUse, say } from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { readFolded } from '../jobs/read-jobs.ts'

/**
 * Concentrate that the fresh charges of planned and open jobs will need, fluid by fluid. One without a day counts as soon as work on it has
 * begun; a charge that was signed off is an entry of its own and counts there.
 */
export async function plannedCharges(
  parts: Pick<BookParts, 'journal' | 'things'>,
  { at, until, today }: { at: Date; until: Date; today: number },
): Promise<Map<string, PlannedUse[]>> {
  const { jobs, shop } = await readFolded(parts, { at, until })
  const planned = new Map<string, PlannedUse[]>()
  for (const { state, opened, steps } of jobs) {
    if (state !== 'planned' && state !== 'open') continue
    const on = dayOf(opened.values?.on) ?? (state === 'open' ? today : null)
    const fill = steps.find((step) => step.writes.some(({ kind }) => kind === 'charge'))
    if (on === null || fill === undefined || fill.pour === null || fill.isDone) continue
    const { fluid } = fill.writes.find(({ kind }) => kind === 'charge')!
    if (typeof fluid !== 'string' || fill.pour.concentrate <= 0) continue
    const name = shop.things.sump.get(opened.sump ?? '')?.name ?? opened.sump ?? say('a sump')
    const use = { on, litres: fill.pour.concentrate, what: say('Fresh charge of {name}', { name }) }
    planned.set(fluid, [...(planned.get(fluid) ?? []), use])
  }
  return planned
}

const dayOf = (value: unknown): number | null =>
  typeof value === 'string' && isDay(value.slice(0, 10)) ? dayNumber(value.slice(0, 10)) : null
