import { useInfiniteQuery } from '@tanstack/preact-query'
import { Link } from 'wouter-preact'
import { readJournal } from '../api/client.ts'
import { useSumps } from '../api/queries.ts'
import type { Book, JournalEntry } from '../api/types.ts'
import { dayIn, sayDay, sayTime } from '../say/when.ts'
import './journal.css'

/** Everything that was ever written down, newest first, what was withdrawn included. */
export function Journal({ book }: { book: Book }) {
  const sumps = useSumps()
  const journal = useInfiniteQuery({
    queryKey: ['journal'],
    queryFn: ({ pageParam }) => readJournal(pageParam),
    initialPageParam: null as string | null,
    getNextPageParam: ({ next }) => next,
  })
  const { timeZone } = book.shop
  const nameOf = (id: string) => sumps.data?.find(({ sump }) => sump === id)?.name ?? id
  const days = byDay(journal.data?.pages.flatMap(({ entries }) => entries) ?? [], timeZone)
  return (
    <div class="whole-journal">
      <div class="page-head">
        <h1>Journal</h1>
        <span class="quiet">newest first; nothing is ever edited or deleted</span>
      </div>
      {journal.error !== null && <p class="fault">{journal.error.message}</p>}
      {journal.data !== undefined && days.length === 0 && <p>Nothing has been written down yet.</p>}
      {days.map(([day, entries]) => (
        <section key={day} aria-label={day} class="journal-day">
          <h2>{sayDay(entries[0]!.at, timeZone, new Date().toISOString())}</h2>
          <ul>
            {entries.map(({ id, at, sump, by, text, withdrawn, reason }) => (
              <li key={id}>
                <Link
                  class="time"
                  href={`/journal/${id}`}
                  aria-label={`The entry of ${sayTime(at, timeZone)}: ${text}`}
                >
                  {sayTime(at, timeZone)}
                </Link>
                <span class="subject">
                  {sump === null ? '' : <Link href={`/sumps/${encodeURIComponent(sump)}`}>{nameOf(sump)}</Link>}
                </span>
                <span class="text">
                  <span class={withdrawn ? 'struck' : ''}>{text}</span>
                  {withdrawn && <span class="quiet"> set aside{reason === null ? '' : `: ${reason}`}</span>}
                </span>
                <span class="who">{by}</span>
              </li>
            ))}
          </ul>
        </section>
      ))}
      {journal.hasNextPage && (
        <button type="button" disabled={journal.isFetchingNextPage} onClick={() => void journal.fetchNextPage()}>
          Further back
        </button>
      )}
      {journal.data === undefined && journal.error === null && <p class="quiet">Opening the journal …</p>}
    </div>
  )
}

function byDay(entries: readonly JournalEntry[], timeZone: string): [string, JournalEntry[]][] {
  const days = new Map<string, JournalEntry[]>()
  for (const entry of entries) {
    const day = dayIn(entry.at, timeZone)
    days.set(day, [...(days.get(day) ?? []), entry])
  }
  return [...days]
}
