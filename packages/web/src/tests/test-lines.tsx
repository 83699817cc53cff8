import { say } from '@sumpbook/fluid'
import type { CalendarLine } from '../api/guidance.ts'
import { dayIn, sayDay, sayWhen } from '../say/when.ts'

/** The tests of one sump: when each was done, when it is due, and who says so. */
export function TestLines({ tests, timeZone, now }: { tests: readonly CalendarLine[]; timeZone: string; now: string }) {
  const asked = tests.filter(({ dueOn, last }) => dueOn !== null || last !== null)
  return (
    <ul class="test-lines">
      {asked.map(({ test, name, dueOn, isDue, last, why, source }) => (
        <li key={test} class={isDue ? 'is-due' : ''}>
          <div class="test-head">
            <strong>{name}</strong>
            <span class={isDue ? 'due-words' : 'quiet'}>{sayDue(dueOn, isDue, dayIn(now, timeZone))}</span>
            <span class="quiet last">
              {last === null ? say('never yet') : say('last {when}', { when: sayWhen(last.at, { timeZone, now }) })}
            </span>
          </div>
          <details>
            <summary>{say('Why then')}</summary>
            <p>{why}</p>
            {source !== null && <p class="quiet">{say('Source: {source}.', { source })}</p>}
          </details>
        </li>
      ))}
    </ul>
  )
}

/** A calendar day stands for itself in every zone. */
function sayDue(dueOn: string | null, isDue: boolean, today: string): string {
  if (dueOn === null) return say('nobody sets a day')
  if (dueOn === today) return say('due today')
  const day = sayDay(`${dueOn}T12:00:00Z`, 'UTC')
  return say(isDue ? 'due since {day}' : 'on {day}', { day })
}
