import { say, sayCautions } from '@sumpbook/fluid'
import { useEffect } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { useSumpCalendar } from '../api/guidance.ts'
import type { Book, Entry } from '../api/types.ts'
import { labelOf } from '../entry/entries.ts'
import { useWriting } from '../entry/use-writing.ts'
import { LimitLines } from '../guidance/limit-lines.tsx'
import { Unsettled } from '../guidance/unsettled.tsx'
import { Cautions } from '../parts/cautions.tsx'
import { readerOf } from '../say/units.ts'
import { Findings } from './findings.tsx'
import { TestForm } from './test-form.tsx'
import { TestLines } from './test-lines.tsx'
import './tests.css'

/** Two parts of a sump's page: its tests, and its limits with where each comes from. */
export function SumpTests({ book, sump, name, now }: { book: Book; sump: string; name: string; now: string }) {
  const answer = useSumpCalendar(sump)
  const writing = useWriting()
  const { timeZone, units } = book.shop
  const { data } = answer
  useEffect(() => {
    // The part that an address names is there only once the answer is.
    if (data !== undefined && location.hash === '#tests') document.getElementById('tests')?.scrollIntoView()
  }, [data === undefined])
  if (data === undefined) return answer.error === null ? null : <p class="fault">{answer.error.message}</p>
  const write = (entries: Entry[]) =>
    writing.write(entries.map((entry) => ({ entry, label: labelOf(entry, name, readerOf(units)) })))
  return (
    <>
      <section aria-labelledby="tests" class="part">
        <h2 id="tests">{say('Tests')}</h2>
        <p class="quiet">
          {say('By {guidance}.', { guidance: data.guidance.name })} <Link href="/shop/guidance">{say('Guidance')}</Link>{' '}
          · <Link href="/tests/samples">{say('Samples')}</Link> ·{' '}
          <Link href={`/tests/found?sump=${encodeURIComponent(sump)}`}>{say('What was found over time')}</Link>
        </p>
        <Findings findings={data.findings} />
        <TestLines tests={data.tests} timeZone={timeZone} now={now} />
        <TestForm sump={sump} isBusy={writing.isBusy} write={write} />
        <Cautions cautions={sayCautions(['phIsNoSlide'])} />
        <p role="status" class="said">
          {writing.said}
        </p>
      </section>
      <section aria-labelledby="limits" class="part">
        <h2 id="limits">{say('Limits, and where each comes from')}</h2>
        <LimitLines limits={data.limits} />
        <Unsettled lines={data.unsettled} />
      </section>
    </>
  )
}
