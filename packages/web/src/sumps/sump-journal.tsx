import { say, sayReason } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Book, HistoryEntry, SumpPage } from '../api/types.ts'
import { write } from '../entry/book-outbox.ts'
import { labelOf, voidEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { journalAddress } from '../journal/asked.ts'
import { readerOf } from '../say/units.ts'
import { sayWhenShort } from '../say/when.ts'
import { SetAsideForm } from '../today/line.tsx'

const shownAtFirst = 20

/** Newest first. Setting an entry aside is asked for first, so that no row carries a button that is hardly ever needed. */
export function SumpJournal({ sump, book, now }: { sump: SumpPage; book: Book; now: string }) {
  const [isAll, setAll] = useState(false)
  const [isPicking, setPicking] = useState(false)
  const [aside, setAside] = useState<HistoryEntry | null>(null)
  const newestFirst = sump.history.toReversed()
  const shown = isAll ? newestFirst : newestFirst.slice(0, shownAtFirst)
  const reader = readerOf(book.shop.units)
  const when = (at: string) => sayWhenShort(at, { timeZone: book.shop.timeZone, now })
  const canBeSetAside = ({ withdrawn, kind }: HistoryEntry) => !withdrawn && kind !== 'void'
  const setEntryAside = (entry: HistoryEntry, reason: string) => {
    const withdrawal = voidEntry(entry.entry, reason, sump.sump, stampNow())
    void write([{ entry: withdrawal, label: labelOf(withdrawal, sump.name, reader) }])
    setAside(null)
    setPicking(false)
  }
  return (
    <>
      <div class="journal-head">
        <h2 id="sump-journal">{say('Journal')}</h2>
        {newestFirst.length > 0 && (
          <button
            type="button"
            class="plain"
            onClick={() => {
              setPicking(!isPicking)
              setAside(null)
            }}
          >
            {isPicking ? say('Leave all as they are') : say('Set an entry aside')}
          </button>
        )}
      </div>
      {newestFirst.length === 0 && <p class="quiet">{say('Nothing has been written down yet.')}</p>}
      <table class="journal">
        <thead>
          <tr>
            <th>{say('When')}</th>
            <th>{say('What')}</th>
            <th>{say('Who')}</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((entry) => (
            <tr key={entry.entry}>
              <td class="when">{when(entry.at)}</td>
              <td>
                <span class={entry.withdrawn ? 'struck' : ''}>{entry.text}</span>
                {entry.withdrawn && (
                  <span class="quiet">
                    {' '}
                    {entry.reason === null
                      ? say('set aside')
                      : say('set aside: {reason}', { reason: sayReason(entry.reason) })}
                  </span>
                )}
                {isPicking && aside === null && canBeSetAside(entry) && (
                  <div>
                    <button
                      type="button"
                      class="pick"
                      aria-label={say('Set aside: {entry}, {when}', { entry: entry.text, when: when(entry.at) })}
                      onClick={() => setAside(entry)}
                    >
                      {say('Set aside')}
                    </button>
                  </div>
                )}
                {aside?.entry === entry.entry && (
                  <SetAsideForm
                    what={say('{entry} of {when}', { entry: entry.text, when: when(entry.at) })}
                    cancel={() => setAside(null)}
                    write={(reason) => setEntryAside(entry, reason)}
                  />
                )}
              </td>
              <td class="who">{entry.by}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <div class="buttons">
        {shown.length < newestFirst.length && (
          <button type="button" onClick={() => setAll(true)}>
            {say('Show all {count}', { count: newestFirst.length })}
          </button>
        )}
        <Link class="button plain" href={journalAddress({ sump: sump.sump })}>
          {say('Look through its journal')}
        </Link>
      </div>
    </>
  )
}
