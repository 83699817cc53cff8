import { say } from '@sumpbook/fluid'
import { useInfiniteQuery } from '@tanstack/preact-query'
import { useMemo, useState } from 'preact/hooks'
import { useLocation, useSearch } from 'wouter-preact'
import { exportAddress, journalTableAddress, readJournal } from '../api/client.ts'
import { useSession, useSumps } from '../api/queries.ts'
import type { Book, JournalPart } from '../api/types.ts'
import { dayIn, sayDay } from '../say/when.ts'
import { type Asked, askedIn, asksForSome, journalAddress, questionOf, sayAsked } from './asked.ts'
import { FilterForm } from './filter-form.tsx'
import { JournalDays } from './journal-days.tsx'
import './filter.css'
import './journal.css'

/** Seen from here every day is said with its year. */
const longAgo = '1970-01-01T00:00:00Z'

/** Everything that was ever written down, newest first, what was set aside included; or what an address asks for of it. */
export function Journal({ book }: { book: Book }) {
  const sumps = useSumps()
  const search = useSearch()
  const asked = useMemo(() => askedIn(search), [search])
  const [, go] = useLocation()
  const [isPicking, setPicking] = useState(false)
  const question = questionOf(asked)
  const journal = useInfiniteQuery({
    queryKey: ['journal', question],
    queryFn: ({ pageParam }) => readJournal(question, pageParam),
    initialPageParam: null as string | null,
    getNextPageParam: ({ next }) => next,
  })
  const { timeZone } = book.shop
  const nameOf = (id: string) => sumps.data?.find(({ sump }) => sump === id)?.name ?? id
  const entries = journal.data?.pages.flatMap((page) => page.entries) ?? []
  const people = [...new Set(entries.flatMap(({ by }) => by ?? []))].sort()
  const saidAsked = sayAsked(asked, { sump: nameOf, day: (day) => sayDay(`${day}T12:00:00Z`, 'UTC', longAgo) })
  const look = (next: Asked) => {
    setPicking(false)
    go(journalAddress(next))
  }
  return (
    <div class="whole-journal">
      <div class="page-head">
        <h1>{say('Journal')}</h1>
        <span class="quiet">{say('newest first; nothing is ever edited or deleted')}</span>
      </div>
      <details class="filter" open={asksForSome(asked) || matchMedia('(min-width: 800px)').matches}>
        <summary>{say('Look for something')}</summary>
        <FilterForm
          asked={asked}
          sumps={sumps.data ?? []}
          people={people}
          today={dayIn(new Date().toISOString(), timeZone)}
          look={look}
        />
      </details>
      {saidAsked !== '' && <p class="asked">{say('Looked for: {asked}.', { asked: saidAsked })}</p>}
      {journal.error !== null && <p class="fault">{journal.error.message}</p>}
      {journal.data !== undefined && entries.length === 0 && (
        <p>
          {saidAsked === '' ? say('Nothing has been written down yet.') : nothingFound(journal.data.pages, timeZone)}
        </p>
      )}
      {entries.length > 0 && (
        <div class="buttons no-print">
          <button type="button" class="plain" onClick={() => setPicking(!isPicking)}>
            {isPicking ? say('Leave all as they are') : say('Set an entry aside')}
          </button>
        </div>
      )}
      <JournalDays
        entries={entries}
        timeZone={timeZone}
        nameOf={nameOf}
        isPicking={isPicking}
        picked={() => setPicking(false)}
      >
        {journal.hasNextPage && (
          <button type="button" disabled={journal.isFetchingNextPage} onClick={() => void journal.fetchNextPage()}>
            {say('Further back')}
          </button>
        )}
        {journal.data === undefined && journal.error === null && <p class="quiet">{say('Opening the journal …')}</p>}
        {/* Under what is still to come it would be pushed away as somebody taps it. */}
        {!journal.isPending && <TakeAlong question={question} isPart={saidAsked !== ''} />}
      </JournalDays>
    </div>
  )
}

/** How far back was looked: whoever finds nothing knows why. */
function nothingFound(pages: readonly JournalPart[], timeZone: string): string {
  const backTo = pages.at(-1)?.lookedBackTo ?? null
  return backTo === null
    ? say('Nothing of that is in the journal.')
    : say('Nothing of that back to {day}; there is more to look through.', { day: sayDay(backTo, timeZone, longAgo) })
}

/** The journal as files. */
function TakeAlong({ question, isPart }: { question: string; isPart: boolean }) {
  const { data: session } = useSession()
  const mayTakeAll = session === undefined || !session.accounts || session.role === 'keeper' || session.role === 'owner'
  return (
    <section aria-labelledby="take-along" class="part no-print">
      <h2 id="take-along">{say('Take it along')}</h2>
      <p class="quiet">
        {isPart
          ? say(
              'What is asked for above as a table, a row an entry, oldest first, in litres and percent. What was set aside is left out.',
            )
          : say(
              'The whole log as a table, a row an entry, oldest first, in litres and percent. What was set aside is left out.',
            )}
      </p>
      <div class="buttons">
        <a class="button" href={journalTableAddress(question, 'csv')} download="sumpbook-journal.csv">
          {say('Table (CSV)')}
        </a>
        <a class="button" href={journalTableAddress(question, 'xlsx')} download="sumpbook-journal.xlsx">
          {say('Workbook (XLSX)')}
        </a>
        {mayTakeAll && (
          <a class="button plain" href={exportAddress} download="sumpbook.json">
            {say('The whole book as a book file')}
          </a>
        )}
      </div>
    </section>
  )
}
