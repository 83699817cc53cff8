import { recordedReason, say, sayReason } from '@sumpbook/fluid'
import { useQuery } from '@tanstack/preact-query'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { readEntry } from '../api/people.ts'
import type { Book } from '../api/types.ts'
import { voidEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { TextField } from '../fields/fields.tsx'
import { sayDay, sayTime } from '../say/when.ts'

/** One entry: who, when, from which device, what was typed, and what became of it. */
export function EntryOf({ book, id }: { book: Book; id: string }) {
  const { data: page, error } = useQuery({ queryKey: ['entry', id], queryFn: () => readEntry(id) })
  if (page === undefined)
    return error === null ? <p class="quiet">{say('Looking it up …')}</p> : <p class="fault">{error.message}</p>
  const { timeZone } = book.shop
  const sayAt = (at: string) => `${sayDay(at, timeZone)}, ${sayTime(at, timeZone)}`
  const { entry, envelope, voids, sump } = page
  const typed = Object.entries(entry.typed ?? {})
  const ahead = envelope?.clockAheadMs ?? null
  const facts: [string, preact.ComponentChildren][] = [
    [say('Happened'), sayAt(page.at)],
    [say('Written down'), sayAt(page.writtenAt)],
    [say('Reached the book'), sayAt(page.receivedAt)],
    [say('By'), page.by ?? say('nobody said')],
    [say('Device'), page.deviceName ?? entry.device ?? say('nobody said')],
    ...(ahead !== null && Math.abs(ahead) >= 60_000 ? [[say('Its clock'), sayClock(ahead)] as [string, string]] : []),
    ...(sump === null
      ? []
      : [
          [say('Sump'), <Link href={`/sumps/${encodeURIComponent(sump)}`}>{sump}</Link>] as [
            string,
            preact.ComponentChildren,
          ],
        ]),
    ...typed.map(([field, text]): [string, string] => [say('Typed as {field}', { field }), text]),
    ...(envelope?.heldSince === undefined ? [] : [[say('Held since'), sayAt(envelope.heldSince)] as [string, string]]),
    ...(page.seq === null
      ? []
      : [[say('Place in the book'), `${page.seq}, ${page.hash?.slice(0, 12)}`] as [string, string]]),
  ]
  return (
    <div class="entry-page">
      <h1>
        <span class={page.withdrawn ? 'struck' : ''}>{page.text}</span>
      </h1>
      {page.quarantine !== null && (
        <p class="doubt">{say('It counts nowhere for now: {reason}.', { reason: page.quarantine })}</p>
      )}
      <dl class="pairs">
        {facts.map(([name, value]) => (
          <>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </>
        ))}
      </dl>
      {typeof entry.photo === 'string' && <Photo name={entry.photo} />}
      {voids.map((one) => (
        <p key={one.id} class="note">
          {one.by === null
            ? say('Set aside {when}', { when: sayAt(one.at) })
            : say('Set aside {when} by {person}', { when: sayAt(one.at), person: one.by })}
          {one.reason === null ? '' : `: ${sayReason(one.reason)}`}{' '}
          <Link href={`/journal/${one.id}`}>{say('That entry')}</Link>
        </p>
      ))}
      {!page.withdrawn && <SetAside id={id} sump={sump} text={page.text} />}
      <details>
        <summary>{say('As the device sent it')}</summary>
        <pre class="wide-table">{JSON.stringify(entry, null, 2)}</pre>
      </details>
      <p>
        <Link href="/journal">{say('To the journal')}</Link>
      </p>
    </div>
  )
}

/** The picture that the entry names; it may come later than the entry. */
function Photo({ name }: { name: string }) {
  const [isThere, setThere] = useState(true)
  if (!isThere)
    return <p class="quiet">{say('Its photo is not in the book yet: the device that took it sends it later.')}</p>
  return (
    <img
      class="photo"
      src={`/api/v1/attachments/${name}`}
      alt={say('Taken with this entry')}
      onError={() => setThere(false)}
    />
  )
}

function sayClock(ahead: number): string {
  const minutes = Math.round(Math.abs(ahead) / 60_000)
  return ahead > 0
    ? say(
        '{minutes, plural, one {ran # minute ahead} other {ran # minutes ahead}}; “written down” is corrected by that',
        { minutes },
      )
    : say(
        '{minutes, plural, one {ran # minute behind} other {ran # minutes behind}}; “written down” is corrected by that',
        { minutes },
      )
}

/** Nothing is deleted: the entry stays, struck through, with who set it aside and why. */
function SetAside({ id, sump, text }: { id: string; sump: string | null; text: string }) {
  const [reason, setReason] = useState('')
  const [isOpen, setOpen] = useState(false)
  const writing = useWriting()
  if (!isOpen) {
    return (
      <div class="buttons">
        <button type="button" onClick={() => setOpen(true)}>
          {say('Set it aside')}
        </button>
      </div>
    )
  }
  return (
    <form
      aria-label={say('Set it aside')}
      onSubmit={(event) => {
        event.preventDefault()
        void writing.write([
          {
            entry: voidEntry(id, recordedReason(reason.trim()), sump, stampNow()),
            label: say('Set aside: {entry}', { entry: text }),
          },
        ])
      }}
    >
      <TextField label={say('Why')} value={reason} onInput={setReason} />
      <div class="buttons">
        <button type="submit" class="main" disabled={writing.isBusy || reason.trim() === ''}>
          {say('Set it aside')}
        </button>
        <button type="button" class="plain" onClick={() => setOpen(false)}>
          {say('Back')}
        </button>
      </div>
      {writing.said !== '' && <p role="status">{writing.said}</p>}
    </form>
  )
}
