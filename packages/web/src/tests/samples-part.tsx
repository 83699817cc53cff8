import { say, sayNumber } from '@sumpbook/fluid'
import { useEffect, useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { type SampleLine, useSamples } from '../api/guidance.ts'
import type { Book, Entry } from '../api/types.ts'
import { labelOf } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { SelectField } from '../fields/fields.tsx'
import { Said } from '../say/said.tsx'
import { readerOf } from '../say/units.ts'
import { sayWhen } from '../say/when.ts'
import { ReportForm } from './report-form.tsx'
import { sayWay } from './sample-ways.ts'
import { SlideReading } from './slide-reading.tsx'
import { type SampleWay, sampleEntry, sampleMethods } from './test-entries.ts'

const shownAtFirst = 12

/** Samples that wait, are to be read, or were read; and results that answer none. */
export function SamplesPart({ book }: { book: Book }) {
  const answer = useSamples()
  const writing = useWriting()
  const [open, setOpen] = useState<string | null>(() => /^#sample-(.+)$/.exec(location.hash)?.[1] ?? null)
  const [isAll, setAll] = useState(false)
  const { data } = answer
  useEffect(() => {
    if (data !== undefined && open !== null) document.getElementById(`sample-${open}`)?.scrollIntoView()
  }, [data === undefined])
  if (data === undefined) {
    return answer.error === null ? (
      <p class="quiet">{say('Looking for samples …')}</p>
    ) : (
      <p class="fault">{answer.error.message}</p>
    )
  }
  const when = (at: string) => sayWhen(at, { timeZone: book.shop.timeZone, now: data.at })
  const write = async (name: string, entries: Entry[]) => {
    const isKept = await writing.write(
      entries.map((entry) => ({ entry, label: labelOf(entry, name, readerOf(book.shop.units)) })),
    )
    if (isKept) setOpen(null)
    return isKept
  }
  // One source for all of them stands once, above.
  const sources = new Set(data.answered.flatMap(({ results }) => results.map(({ source }) => source)))
  sources.delete(null)
  const shared = sources.size === 1 ? [...sources][0]! : null
  const toRead = data.pending.filter(({ state }) => state !== 'growing')
  const growing = data.pending.filter(({ state }) => state === 'growing')
  const line = (sample: SampleLine) => (
    <SampleOf
      key={sample.id}
      sample={sample}
      when={when}
      isOpen={open === sample.id}
      toggle={() => setOpen(open === sample.id ? null : sample.id)}
      isBusy={writing.isBusy}
      write={(entries) => write(sample.name, entries)}
    />
  )
  return (
    <>
      <p class="intro">
        <Said
          text="Classes of germs by {guidance}. <page>Guidance and its sources</page>"
          values={{ guidance: data.guidance }}
          parts={{ page: (inside) => <Link href="/shop/guidance">{inside}</Link> }}
        />
        {shared !== null && <span class="quiet source">{shared}.</span>}
      </p>
      <p role="status" class="said">
        {writing.said}
      </p>
      <h2>
        {toRead.length === 0
          ? say('Nothing to read now')
          : say('{count, plural, one {# sample to read} other {# samples to read}}', { count: toRead.length })}
      </h2>
      {toRead.map(line)}
      {growing.length > 0 && <h2>{say('Not yet')}</h2>}
      {growing.map(line)}
      <TakeSample book={book} isBusy={writing.isBusy} write={write} />
      {data.strays.length > 0 && (
        <>
          <h2>{say('Results that answer no sample')}</h2>
          {data.strays.map((stray) => (
            <p key={stray.id} class="doubt">
              <Link href={`/journal/${stray.id}`}>
                {stray.name}, {when(stray.at)}
              </Link>
              : {stray.says}
            </p>
          ))}
        </>
      )}
      <h2>{say('Already read')}</h2>
      {data.answered.length === 0 && <p class="quiet">{say('None of the last four months.')}</p>}
      <ul class="answered">
        {data.answered.slice(0, isAll ? undefined : shownAtFirst).map((sample) => (
          <Answered key={sample.id} sample={sample} when={when} isSourceSaid={shared !== null} />
        ))}
      </ul>
      {!isAll && data.answered.length > shownAtFirst && (
        <button type="button" onClick={() => setAll(true)}>
          {say('Show all {count}', { count: sayNumber(data.answered.length, 0) })}
        </button>
      )}
      {data.neverRead.length > 0 && (
        <details>
          <summary>
            {say('{count, plural, one {# sample was never read} other {# samples were never read}}', {
              count: data.neverRead.length,
            })}
          </summary>
          <ul class="answered">
            {data.neverRead.map(({ id, name, method, at, says }) => (
              <li key={id}>
                <strong>{name}</strong> {sayWay(method)}, {when(at)}. <span class="quiet">{says}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  )
}

function SampleOf({
  sample,
  when,
  isOpen,
  toggle,
  isBusy,
  write,
}: {
  sample: SampleLine
  when(at: string): string
  isOpen: boolean
  toggle(): void
  isBusy: boolean
  write(entries: Entry[]): Promise<boolean>
}) {
  const { id, sump, name, method, at, says, state, results } = sample
  const isSlide = method === 'dip slide' || method === 'slide for moulds'
  const words = say(isOpen ? 'Close' : state === 'growing' ? 'Read it early' : isSlide ? 'Read it' : 'Write the report')
  return (
    <article class="due-sump" id={`sample-${id}`} aria-label={say('{what} of {name}', { what: sayWay(method), name })}>
      <div class="due-head">
        <h3>
          <Link href={`/sumps/${encodeURIComponent(sump)}#tests`}>{name}</Link>
        </h3>
        <span>
          {sayWay(method)}, {when(at)}
        </span>
        {method !== 'standing sample' && (
          <button
            type="button"
            class={isOpen || state === 'growing' ? 'plain' : ''}
            aria-expanded={isOpen}
            aria-label={say('{button}: the {what} of {name}', { button: words, what: sayWay(method), name })}
            onClick={toggle}
          >
            {words}
          </button>
        )}
        {method === 'standing sample' && (
          <Link class="button plain" href={`/sumps/${encodeURIComponent(sump)}/why`}>
            {say('Something wrong with it?')}
          </Link>
        )}
      </div>
      <p class={state === 'past' ? 'note' : 'quiet'}>{says}</p>
      {results.map((result) => (
        <p key={result.id}>
          {when(result.readAt)}: {result.says}
        </p>
      ))}
      {isOpen &&
        (isSlide ? (
          <SlideReading sample={sample} isBusy={isBusy} write={write} />
        ) : (
          <ReportForm sample={sample} isBusy={isBusy} write={write} />
        ))}
    </article>
  )
}

function Answered({
  sample,
  when,
  isSourceSaid,
}: {
  sample: SampleLine
  when(at: string): string
  isSourceSaid: boolean
}) {
  const { sump, name, method, at, results, result } = sample
  return (
    <li>
      <strong>
        <Link href={`/sumps/${encodeURIComponent(sump)}#tests`}>{name}</Link>
      </strong>{' '}
      <span class="quiet">
        {sayWay(method)}, {when(at)}
      </span>
      {results.map((one) => (
        <div key={one.id} class={one.id === result ? '' : 'quiet'}>
          {one.says}
          {results.length > 1 && one.id !== result && ` ${say('It does not count: another reading does.')}`}
          {one.source !== null && !isSourceSaid && (
            <span class="quiet source"> {say('By {source}.', { source: one.source })}</span>
          )}
        </div>
      ))}
    </li>
  )
}

function TakeSample({
  book,
  isBusy,
  write,
}: {
  book: Book
  isBusy: boolean
  write(name: string, entries: Entry[]): Promise<boolean>
}) {
  const [sump, setSump] = useState('')
  const [way, setWay] = useState<SampleWay>('dip slide')
  const sumps = book.sumpList ?? []
  const name = sumps.find(({ id }) => id === sump)?.name ?? ''
  return (
    <section class="part take-sample" aria-labelledby="take-sample">
      <h2 id="take-sample">{say('A sample was taken')}</h2>
      <div class="take-fields">
        <SelectField
          label={say('Sump it was taken from')}
          value={sump}
          onInput={setSump}
          choices={[['', say('choose a sump')], ...sumps.map(({ id, name }) => [id, name] as const)]}
        />
        <SelectField
          label={say('Taken as')}
          value={way}
          onInput={(next) => setWay(next as SampleWay)}
          choices={sampleMethods.map((method) => [method, sayWay(method)] as const)}
        />
      </div>
      <div class="buttons">
        <button
          type="button"
          disabled={isBusy || sump === ''}
          onClick={() => void write(name, [sampleEntry(sump, way, stampNow())])}
        >
          {say('Write it down')}
        </button>
      </div>
    </section>
  )
}
