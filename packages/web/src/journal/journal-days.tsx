import { say } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { JournalEntry } from '../api/types.ts'
import { voidEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { Gradually } from '../parts/gradually.tsx'
import { dayIn, sayDay } from '../say/when.ts'
import { JournalLine } from './journal-line.tsx'

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
      <Gradually>
        {byDay(entries, timeZone).map(([day, lines]) => (
          <JournalDay key={day} day={day} said={sayDay(lines[0]!.at, timeZone, now)}>
            {lines.map((line) => (
              <JournalLine
                key={line.id}
                line={line}
                timeZone={timeZone}
                nameOf={nameOf}
                asideForm={
                  isPicking && !line.withdrawn && line.kind !== 'void'
                    ? {
                        state: aside === null ? 'offered' : aside === line.id ? 'open' : 'elsewhere',
                        open: () => setAside(line.id),
                        close: () => setAside(null),
                        write: (reason) => void setEntryAside(line, reason),
                      }
                    : null
                }
              />
            ))}
          </JournalDay>
        ))}
        {children}
      </Gradually>
    </>
  )
}

function JournalDay({ day, said, children }: { day: string; said: string; children: ComponentChildren }) {
  return (
    <section aria-label={day} class="journal-day">
      <h2>{said}</h2>
      <ul>{children}</ul>
    </section>
  )
}

function byDay(entries: readonly JournalEntry[], timeZone: string): [string, JournalEntry[]][] {
  return [...Map.groupBy(entries, ({ at }) => dayIn(at, timeZone))]
}
