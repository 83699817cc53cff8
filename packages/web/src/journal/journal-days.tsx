import { say, sayReason } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { JournalEntry } from '../api/types.ts'
import { voidEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { useGradually } from '../parts/gradually.tsx'
import { dayIn, sayDay, sayTime } from '../say/when.ts'
import { SetAsideForm } from '../today/line.tsx'

interface JournalDaysProps {
  /** What stands under the last line. */
  children: ComponentChildren
  entries: readonly JournalEntry[]
  timeZone: string
  nameOf(sump: string): string
  /** Whether an entry can be picked to be set aside. */
  isPicking: boolean
  picked(): void
}

/** Lines of the journal under their days, youngest first. */
export function JournalDays({ children, entries, timeZone, nameOf, isPicking, picked }: JournalDaysProps) {
  const [aside, setAside] = useState<string | null>(null)
  const writing = useWriting()
  const now = new Date().toISOString()
  const days = byDay(entries, timeZone)
  const drawn = useGradually(days.length)
  const setEntryAside = async ({ id, sump, text }: JournalEntry, reason: string) => {
    const isDone = await writing.write([
      { entry: voidEntry(id, reason, sump, stampNow()), label: say('Set aside: {entry}', { entry: text }) },
    ])
    if (!isDone) return
    setAside(null)
    picked()
  }
  return (
    <>
      <p role="status" class="said">
        {writing.said}
      </p>
      {days.slice(0, drawn).map(([day, lines]) => (
        <section key={day} aria-label={day} class="journal-day">
          <h2>{sayDay(lines[0]!.at, timeZone, now)}</h2>
          <ul>
            {lines.map((line) => (
              <li key={line.id}>
                <Link
                  class="time"
                  href={`/journal/${line.id}`}
                  aria-label={say('The entry of {time}: {entry}', {
                    time: sayTime(line.at, timeZone),
                    entry: line.text,
                  })}
                >
                  {sayTime(line.at, timeZone)}
                </Link>
                <span class="subject">
                  {line.sump === null ? (
                    ''
                  ) : (
                    <Link href={`/sumps/${encodeURIComponent(line.sump)}`}>{nameOf(line.sump)}</Link>
                  )}
                </span>
                <span class="text">
                  <span class={line.withdrawn ? 'struck' : ''}>{line.text}</span>
                  {line.withdrawn && <span class="quiet"> {sayAside(line.reason)}</span>}
                  {isPicking && aside === null && !line.withdrawn && line.kind !== 'void' && (
                    <button
                      type="button"
                      class="pick"
                      aria-label={say('Set aside: {entry}', { entry: `${line.text}, ${sayTime(line.at, timeZone)}` })}
                      onClick={() => setAside(line.id)}
                    >
                      {say('Set aside')}
                    </button>
                  )}
                  {aside === line.id && (
                    <SetAsideForm
                      what={say('{entry} of {time}', { entry: line.text, time: sayTime(line.at, timeZone) })}
                      cancel={() => setAside(null)}
                      write={(reason) => void setEntryAside(line, reason)}
                    />
                  )}
                </span>
                <span class="who">{line.by}</span>
              </li>
            ))}
          </ul>
        </section>
      ))}
      {drawn >= days.length && children}
    </>
  )
}

const sayAside = (reason: string | null): string =>
  reason === null ? say('set aside') : say('set aside: {reason}', { reason: sayReason(reason) })

function byDay(entries: readonly JournalEntry[], timeZone: string): [string, JournalEntry[]][] {
  return [...Map.groupBy(entries, ({ at }) => dayIn(at, timeZone))]
}
