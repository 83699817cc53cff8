import { say, sayList, sayNumber, sayTest } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { type ShopCalendar, useCalendar } from '../api/guidance.ts'
import type { Book, Entry } from '../api/types.ts'
import { labelOf } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { Said } from '../say/said.tsx'
import { readerOf } from '../say/units.ts'
import { sayDay } from '../say/when.ts'
import { Findings } from './findings.tsx'
import { lookedEntry } from './test-entries.ts'
import { TestForm } from './test-form.tsx'

type Line = ShopCalendar['sumps'][number]

/** What is due of every sump, in walking order, each with a form to write it down; below, what comes next. */
export function DuePart({ book }: { book: Book }) {
  const answer = useCalendar()
  const writing = useWriting()
  const [open, setOpen] = useState<string | null>(null)
  if (answer.data === undefined) {
    return answer.error === null ? (
      <p class="quiet">{say('Looking up the days …')}</p>
    ) : (
      <p class="fault">{answer.error.message}</p>
    )
  }
  const { guidance, sumps } = answer.data
  const reader = readerOf(book.shop.units)
  const write = (line: Line, entries: Entry[]) =>
    writing.write(entries.map((entry) => ({ entry, label: labelOf(entry, line.name, reader) })))
  const due = sumps.filter((line) => dueOf(line).length > 0)
  const asks = sumps.filter(({ findings }) => findings.some(({ urgency }) => urgency !== 'note'))
  const unseen = sumps.filter(({ tests }) => tests.some(({ test, isDue }) => test === 'senses' && isDue))
  const lookAtAll = () => {
    const items = unseen.map((line) => {
      const entry = lookedEntry(line.sump, stampNow())
      return { entry, label: labelOf(entry, line.name, reader) }
    })
    void writing.write(items)
  }
  return (
    <>
      <p class="intro">
        <Said
          text="By {guidance}. <page>Guidance and its sources</page>"
          values={{ guidance: guidance.name }}
          parts={{ page: (inside) => <Link href="/shop/guidance">{inside}</Link> }}
        />
      </p>
      {guidance.outcome === 'none' && (
        <p class="note">
          <Said
            text="No guidance is chosen: only strength has a day. <page>Choose it under Shop</page>."
            parts={{ page: (inside) => <Link href="/shop/guidance">{inside}</Link> }}
          />
        </p>
      )}
      {asks.length > 0 && <h2>{say('To be looked into')}</h2>}
      {asks.map((line) => (
        <article key={line.sump} class="due-sump">
          <h3>
            <Link href={`/sumps/${encodeURIComponent(line.sump)}#tests`}>{line.name}</Link>
          </h3>
          <Findings findings={line.findings.filter(({ urgency }) => urgency !== 'note')} />
        </article>
      ))}
      <h2>
        {due.length === 0
          ? say('Nothing is due today')
          : say('{count, plural, one {Due of # sump} other {Due of # sumps}}', { count: due.length })}
      </h2>
      {unseen.length > 1 && (
        <div class="buttons">
          <button type="button" disabled={writing.isBusy} onClick={lookAtAll}>
            {say('Looked and smelt at all {count}: nothing found', { count: sayNumber(unseen.length, 0) })}
          </button>
        </div>
      )}
      <p role="status" class="said">
        {writing.said}
      </p>
      {due.map((line) => (
        <article key={line.sump} class="due-sump">
          <div class="due-head">
            <h3>
              <Link href={`/sumps/${encodeURIComponent(line.sump)}#tests`}>{line.name}</Link>
            </h3>
            <span>{sayList(dueOf(line).map(({ test }) => sayTest(test)))}</span>
            <button
              type="button"
              class="plain"
              aria-expanded={open === line.sump}
              aria-label={say(open === line.sump ? 'Close: a test of {name}' : 'Write: a test of {name}', {
                name: line.name,
              })}
              onClick={() => setOpen(open === line.sump ? null : line.sump)}
            >
              {say(open === line.sump ? 'Close' : 'Write')}
            </button>
          </div>
          {open === line.sump && (
            <TestForm sump={line.sump} isBusy={writing.isBusy} write={(entries) => write(line, entries)} />
          )}
        </article>
      ))}
      <Coming sumps={sumps} />
    </>
  )
}

const dueOf = ({ tests }: Line) => tests.filter(({ isDue }) => isDue)

/** The days to come, each with what is due of how many. */
function Coming({ sumps }: { sumps: readonly Line[] }) {
  const coming = sumps.flatMap(({ name: sump, tests }) =>
    tests
      .filter(({ isDue, dueOn, test }) => !isDue && dueOn !== null && test !== 'senses')
      .map((test) => ({ sump, test })),
  )
  const days = [...Map.groupBy(coming, ({ test }) => test.dueOn!)].toSorted(([a], [b]) => (a < b ? -1 : 1)).slice(0, 10)
  if (days.length === 0) return null
  return (
    <>
      <h2>{say('Coming')}</h2>
      <ul class="coming">
        {days.map(([day, tests]) => (
          <li key={day}>
            <strong>{sayDay(`${day}T12:00:00Z`, 'UTC')}</strong>{' '}
            {[...Map.groupBy(tests, ({ test }) => test.name)]
              .map(([name, of]) =>
                of.length > 3
                  ? say('{test} of {count}', { test: name, count: sayNumber(of.length, 0) })
                  : say('{test} of {sumps}', { test: name, sumps: sayList(of.map(({ sump }) => sump)) }),
              )
              .join(' · ')}
          </li>
        ))}
      </ul>
    </>
  )
}
