import { sayOnDay } from './days.ts'
import { sayCount } from './phrases.ts'

/** How far a job has come. */
export interface SaidJob {
  state: 'planned' | 'open' | 'waiting' | 'done' | 'given-up'
  done: number
  steps: number
  /** Title of the next step. */
  next: string | null
  /** Instants, RFC 3339; null where there is none. */
  plannedAt: string | null
  slideAt: string | null
  /** What the last verdict said. */
  verdict: string | null
}

/** Where a job stands, one sentence. */
export function sayJob(
  { state, done, steps, next, plannedAt, slideAt, verdict }: SaidJob,
  reader: { timeZone: string; now: string },
): string {
  switch (state) {
    case 'planned':
      return plannedAt === null ? 'Planned, no day set.' : `Planned: ${sayOnDay(plannedAt, reader)}.`
    case 'open':
      return `${done} of ${sayCount(steps, 'step', 'steps')} done${next === null ? '' : `; next: ${lower(next)}`}.`
    case 'waiting':
      return slideAt === null
        ? 'It waits for its later slide.'
        : `It waits for its later slide: ${sayOnDay(slideAt, reader)}.`
    case 'done':
      return verdict ?? 'Done.'
    case 'given-up':
      return `Given up after ${done} of ${sayCount(steps, 'step', 'steps')}.`
  }
}

const lower = (title: string) => title[0]!.toLowerCase() + title.slice(1)
