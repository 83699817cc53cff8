import { say, speech } from '../words/index.ts'
import { sayOnDay } from './days.ts'

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
      return plannedAt === null
        ? say('Planned, no day set.')
        : say('Planned: {day}.', { day: sayOnDay(plannedAt, reader) })
    case 'open':
      return next === null
        ? say('{done} of {steps, plural, one {# step} other {# steps}} done.', { done, steps })
        : say('{done} of {steps, plural, one {# step} other {# steps}} done; next: {next}.', {
            done,
            steps,
            next: inSentence(next),
          })
    case 'waiting':
      return slideAt === null
        ? say('It waits for its later slide.')
        : say('It waits for its later slide: {day}.', { day: sayOnDay(slideAt, reader) })
    case 'done':
      return verdict ?? say('Done.')
    case 'given-up':
      return say('Given up after {done} of {steps, plural, one {# step} other {# steps}}.', { done, steps })
  }
}

/** A title behind a colon: English gives up its capital there; a German noun would not, and elsewhere it does no harm. */
const inSentence = (title: string) => (speech().language === 'en' ? title[0]!.toLowerCase() + title.slice(1) : title)
