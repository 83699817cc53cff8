import { parallelPlan, sayParallel, sharedThings, stretchesOf, unitsHere } from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import type { SideBySide } from './job-types.ts'
import { makeSheet } from './make-sheet.ts'
import { readCleanoutPlan } from './read-cleanout-plan.ts'

/** Which sumps are cleaned out side by side, and with what. */
export interface SideBySideQuestion {
  at: Date
  /** Ids, as many as can be looked at together. */
  sumps: readonly string[]
  people: number
  /** Pumps or trucks to drain with. */
  pumps: number
  /** When it begins; the time of asking without it. */
  start?: Date
}

/**
 * Cleanouts side by side with few pumps and few people, each by the plan that the book makes for its sump. Hours run on: nights are not left out.
 *
 * @throws {BookError} `not-found` a sump, `refused-input` what a plan needs and the book does not know
 */
export async function readSideBySide(parts: BookParts, question: SideBySideQuestion): Promise<SideBySide> {
  const { at, sumps, people, pumps, start = at } = question
  const things = (await parts.things()).at(at.toISOString())
  const plans = await Promise.all(sumps.map((sump) => readCleanoutPlan(parts, sump, { at })))
  const jobs = plans.map(({ sump, sheet, opening }) => {
    const made = makeSheet(sheet, opening.values, {
      things,
      at: at.toISOString(),
      reader: { units: unitsHere(things.shop) },
      sump: things.sump.get(sump)!,
    })
    return stretchesOf(sump, made!.cleanout!)
  })
  const plan = parallelPlan({ jobs, capacity: { [sharedThings.person]: people, [sharedThings.pumpOut]: pumps } })
  const instant = (hours: number) => new Date(start.getTime() + Math.round(hours * 60) * 60_000).toISOString()
  const titles = new Map(plans.flatMap(({ steps }) => steps.map(({ id, title }) => [id, title] as const)))
  return {
    sentence: sayParallel(plan),
    machines: plan.jobs.map(({ id, start: from, finish, stretches }) => ({
      sump: id,
      name: things.sump.get(id)?.name ?? id,
      start: instant(from),
      finish: instant(finish),
      hours: finish - from,
      stretches: stretches.map((stretch) => ({
        name: titles.get(stretch.name) ?? stretch.name,
        start: instant(stretch.start),
        finish: instant(stretch.finish),
        from: stretch.start,
        to: stretch.finish,
      })),
    })),
    finish: instant(plan.finish),
    downtimeHours: plan.downtime,
    lowerBoundHours: plan.lowerBound,
    exact: plan.exact,
  }
}
