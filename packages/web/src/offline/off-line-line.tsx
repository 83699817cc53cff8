import { say } from '@sumpbook/fluid'
import { type QueryClient, useQueryClient } from '@tanstack/preact-query'
import { useEffect, useState } from 'preact/hooks'
import { dayIn, sayDay, sayTime } from '../say/when.ts'
import { useObserved } from './observed.ts'
import { reach, stayOffLine, staysOffLine } from './reach.ts'

/** Off line, or out of reach: said once for the page, with the time of what it shows. */
export function OffLineLine({ timeZone }: { timeZone: string }) {
  const stays = useObserved(staysOffLine)
  const { state } = useObserved(reach)
  const shownAt = useShownAt(useQueryClient())
  if (!stays && state === 'in-reach') return null
  const when = shownAt === null ? null : sayAsOf(shownAt, Date.now(), timeZone)
  return (
    <p class="off-line" role="status">
      {stays ? sayKept(when) : sayOut(when)} {say('What you write stays on this device.')}
      {stays && (
        <button type="button" class="plain" onClick={() => stayOffLine(false)}>
          {say('Go back on line')}
        </button>
      )}
    </p>
  )
}

const sayKept = (when: string | null) =>
  when === null
    ? say('Kept off line by you: nothing is sent.')
    : say('As of {when}, kept off line by you: nothing is sent.', { when })

const sayOut = (when: string | null) =>
  when === null ? say('Out of reach now.') : say('As of {when}, out of reach now.', { when })

/** "9:40", with the day where it is not today. */
export function sayAsOf(at: number, now: number, timeZone: string): string {
  const [then, today] = [at, now].map((ms) => new Date(ms).toISOString()) as [string, string]
  const time = sayTime(then, timeZone)
  return dayIn(then, timeZone) === dayIn(today, timeZone) ? time : `${sayDay(then, timeZone, today)} ${time}`
}

/** When the oldest answer that the page shows was given, ms since 1970; null where it shows none. */
function useShownAt(queries: QueryClient): number | null {
  const [at, setAt] = useState(() => oldestShown(queries))
  useEffect(() => queries.getQueryCache().subscribe(() => setAt(oldestShown(queries))), [queries])
  return at
}

function oldestShown(queries: QueryClient): number | null {
  const times = queries
    .getQueryCache()
    .findAll({ type: 'active' })
    // Of the shop as such and of who is here nothing is shown that ages.
    .filter(({ queryKey: [what], state }) => what !== 'book' && what !== 'session' && state.data !== undefined)
    .map(({ state }) => state.dataUpdatedAt)
  return times.length === 0 ? null : Math.min(...times)
}
