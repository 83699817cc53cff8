import { say, sayReason } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import type { JournalEntry } from '../api/types.ts'
import { sayTime } from '../say/when.ts'
import { SetAsideForm } from '../today/line.tsx'

interface JournalLineProps {
  line: JournalEntry
  timeZone: string
  nameOf(sump: string): string
  /** How it is set aside; null where it cannot be, or entries are only read. */
  asideForm: AsideForm | null
}

/** One form is open at a time: the button is offered where none is. */
export interface AsideForm {
  state: 'offered' | 'open' | 'elsewhere'
  open(): void
  close(): void
  write(reason: string): void
}

/** An entry of the journal: when, where, what and by whom. */
export function JournalLine({ line, timeZone, nameOf, asideForm }: JournalLineProps) {
  const time = sayTime(line.at, timeZone)
  return (
    <li>
      <Link
        class="time"
        href={`/journal/${line.id}`}
        aria-label={say('The entry of {time}: {entry}', { time, entry: line.text })}
      >
        {time}
      </Link>
      <span class="subject">
        {line.sump !== null && <Link href={`/sumps/${encodeURIComponent(line.sump)}`}>{nameOf(line.sump)}</Link>}
      </span>
      <span class="text">
        <span class={line.withdrawn ? 'struck' : ''}>{line.text}</span>
        {line.withdrawn && <span class="quiet"> {sayAside(line.reason)}</span>}
        {asideForm?.state === 'offered' && (
          <button
            type="button"
            class="pick"
            aria-label={say('Set aside: {entry}', { entry: `${line.text}, ${time}` })}
            onClick={asideForm.open}
          >
            {say('Set aside')}
          </button>
        )}
        {asideForm?.state === 'open' && (
          <SetAsideForm
            what={say('{entry} of {time}', { entry: line.text, time })}
            cancel={asideForm.close}
            write={asideForm.write}
          />
        )}
      </span>
      <span class="who">{line.by}</span>
    </li>
  )
}

const sayAside = (reason: string | null): string =>
  reason === null ? say('set aside') : say('set aside: {reason}', { reason: sayReason(reason) })
