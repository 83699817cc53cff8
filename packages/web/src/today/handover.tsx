import type { Handovers } from '@sumpbook/book/handover'
import { say, sayReadBy } from '@sumpbook/fluid'
import { useQuery } from '@tanstack/preact-query'
import { useId, useState } from 'preact/hooks'
import { ask } from '../api/client.ts'
import type { Entry } from '../api/types.ts'
import { handoverEntry, noteReadEntry } from '../entry/entries.ts'
import type { Stamp } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { sayWhen } from '../say/when.ts'

type Answer = Omit<Handovers, 'notes'> & {
  notes: (Omit<Handovers['notes'][number], 'readBy'> & {
    readBy: { entry: string; by: string | null; person?: string | null; at: string }[]
  })[]
}

const useHandovers = (isOpen: boolean) =>
  useQuery({ queryKey: ['handover'], queryFn: () => ask<Answer>('/handover'), enabled: isOpen })

/** What this shift leaves to the next: its note, begun from what it did and what is open; and the last notes, with who has read them. */
export function HandoverPart({ time }: { time: { at: string; timeZone: string } }) {
  const [isOpen, setOpen] = useState(() => location.hash === '#handover')
  const answer = useHandovers(isOpen)
  const { data } = answer
  const writing = useWriting()
  const writeDown = (build: (stamp: Stamp) => Entry, label: string) =>
    writing.write([{ entry: build(stampNow()), label }])
  return (
    <details id="handover" class="handover-part" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say('Hand over to the next shift')}</summary>
      {data === undefined ? (
        <p class="quiet">{answer.error === null ? say('Putting the note together …') : answer.error.message}</p>
      ) : (
        <>
          <NoteForm
            key={data.proposal.text}
            proposal={data.proposal.text}
            isBusy={writing.isBusy}
            write={(text) =>
              void writeDown((stamp) => handoverEntry(text, null, stamp), say('A note to the next shift'))
            }
          />
          <p role="status">{writing.said}</p>
          {data.notes.length > 0 && <h3>{say('The last notes')}</h3>}
          {data.notes.map(({ entry, at, by, text, readBy }) => (
            <article key={entry} class="shift-note">
              <p class="quiet">
                {sayWhen(at, { timeZone: time.timeZone, now: time.at })}
                {by === null ? '' : `, ${by}`}. {sayReadBy(readBy.map((one) => one.by ?? say('somebody')))}
              </p>
              <p class="note-text">{text}</p>
              <button
                type="button"
                disabled={writing.isBusy}
                onClick={() => void writeDown((stamp) => noteReadEntry(entry, stamp), say('A note read'))}
              >
                {say('I have read it')}
              </button>
            </article>
          ))}
        </>
      )}
    </details>
  )
}

function NoteForm({ proposal, isBusy, write }: { proposal: string; isBusy: boolean; write(text: string): void }) {
  const [text, setText] = useState(proposal)
  const [isTried, setTried] = useState(false)
  const id = useId()
  const isEmpty = text.trim() === ''
  return (
    <form
      class="note-form"
      aria-label={say('A note to the next shift')}
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        if (!isEmpty) write(text.trim())
      }}
    >
      <label for={id}>{say('The note, begun from what this shift wrote down. Change it as you like.')}</label>
      <textarea
        id={id}
        rows={Math.min(14, 3 + Math.ceil(text.length / 60))}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
      />
      {isTried && isEmpty && <div class="fault">{say('Found nothing; expected a few words.')}</div>}
      <div class="buttons">
        <button type="submit" class="main" disabled={isBusy}>
          {say('Leave the note')}
        </button>
      </div>
    </form>
  )
}
