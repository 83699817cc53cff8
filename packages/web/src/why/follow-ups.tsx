import { say, sayFinding, sayList } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Observed } from '../api/types.ts'
import { TextField } from '../fields/fields.tsx'
import { sayWhenShort } from '../say/when.ts'

/** Signs that somebody must answer for, and the answer. */
export function FollowUps({
  observed,
  timeZone,
  now,
  isBusy,
  write,
}: {
  observed: readonly Observed[]
  timeZone: string
  now: string
  isBusy: boolean
  write(note: string): void
}) {
  const [note, setNote] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const open = observed.filter(({ toFollowUp, answeredAt }) => toFollowUp.length > 0 && answeredAt === null)
  if (open.length === 0) return null
  return (
    <section aria-labelledby="follow-up" class="part">
      <h2 id="follow-up">{say('To be answered for')}</h2>
      <ul class="plain-list">
        {open.map(({ entry, at, toFollowUp }) => (
          <li key={entry}>
            {sayWhenShort(at, { timeZone, now })}: <b>{sayList(toFollowUp.map(sayFinding))}</b>
          </li>
        ))}
      </ul>
      <form
        onSubmit={(event) => {
          event.preventDefault()
          if (note.trim() === '') return setFault(say('Say in a few words what was done.'))
          setFault(null)
          setNote('')
          write(note.trim())
        }}
      >
        <TextField
          label={say('What was done about it')}
          value={note}
          onInput={setNote}
          fault={fault}
          hint={say('It then leaves Today. No names, no diagnoses. A keeper writes this.')}
        />
        <div class="buttons">
          <button type="submit" disabled={isBusy}>
            {say('Write down what was done')}
          </button>
        </div>
      </form>
    </section>
  )
}
