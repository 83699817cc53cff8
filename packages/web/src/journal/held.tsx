import { message, notLetIn, say } from '@sumpbook/fluid'
import { useQuery } from '@tanstack/preact-query'
import { Link } from 'wouter-preact'
import { type HeldEntry, readQuarantine } from '../api/people.ts'
import { useSumps } from '../api/queries.ts'
import type { Book, Entry } from '../api/types.ts'
import { voidEntry } from '../entry/entries.ts'
import { envelope } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { sayDay, sayTime } from '../say/when.ts'

/** Entries that are kept and count nowhere for now, each with what it waits for. */
export function Held({ book }: { book: Book }) {
  const sumps = useSumps()
  const nameOf = (id: string) => sumps.data?.find(({ sump }) => sump === id)?.name ?? id
  const { data: entries, error } = useQuery({ queryKey: ['quarantine'], queryFn: readQuarantine })
  return (
    <div>
      <div class="page-head">
        <h1>{say('Entries that wait')}</h1>
        <span class="quiet">{say('kept, and counted nowhere until somebody has looked')}</span>
      </div>
      {error !== null && <p class="fault">{error.message}</p>}
      {entries?.length === 0 && <p>{say('None.')}</p>}
      {entries?.map((entry) => (
        <HeldLine
          key={entry.id}
          entry={entry}
          place={entry.sump === null ? null : nameOf(entry.sump)}
          timeZone={book.shop.timeZone}
        />
      ))}
    </div>
  )
}

const waits = {
  keeper: message('A keeper lets it in or sets it aside.'),
  'set-up': message('It counts as soon as what it is about is set up under Shop.'),
  'newer version': message('It counts once this server has a version that knows it.'),
}

function HeldLine({ entry, place, timeZone }: { entry: HeldEntry; place: string | null; timeZone: string }) {
  const writing = useWriting()
  const { id, text, by, at, sump, why, waitsFor } = entry
  const letIn = (): Entry => {
    const verdict = { ...envelope(stampNow()), kind: 'verdict' as const, entries: [id], answer: 'let in' }
    return sump === null ? { ...verdict, about: { kind: 'shop' } } : { ...verdict, sump }
  }
  return (
    <article class="note">
      <h2>
        <Link href={`/journal/${id}`}>{place === null ? text : `${place}: ${text}`}</Link>
      </h2>
      <p>
        {sayDay(at, timeZone)}, {sayTime(at, timeZone)}
        {by === null ? '' : `, ${by}`}: {why}. {say(waits[waitsFor])}
      </p>
      {waitsFor === 'keeper' && (
        <div class="buttons">
          <button
            type="button"
            class="main"
            disabled={writing.isBusy}
            onClick={() => void writing.write([{ entry: letIn(), label: say('Let in: {entry}', { entry: text }) }])}
          >
            {say('Let it in')}
          </button>
          <button
            type="button"
            disabled={writing.isBusy}
            onClick={() =>
              void writing.write([
                { entry: voidEntry(id, notLetIn, sump, stampNow()), label: say('Set aside: {entry}', { entry: text }) },
              ])
            }
          >
            {say('Set it aside')}
          </button>
        </div>
      )}
      {writing.said !== '' && <p role="status">{writing.said}</p>}
    </article>
  )
}
