import { say, sayHours, sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Book, Entry } from '../api/types.ts'
import { useWaiting } from '../entry/book-outbox.ts'
import { envelope } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { ClaimLine } from '../parts/claim-line.tsx'
import { readerOf } from '../say/units.ts'
import { sayDay } from '../say/when.ts'
import { Asking } from './asking.tsx'
import { type Job, useJob } from './asks.ts'
import { SheetStep } from './sheet-step.tsx'
import { stepEntries } from './step-entries.ts'
import './cleanouts.css'

/** One job, step by step: what to do, what to mind, how much, and who signed. */
export function JobSheet({ book, id }: { book: Book; id: string }) {
  const job = useJob(id)
  const writing = useWriting()
  const waiting = useWaiting()
  const [outOfTurn, setOutOfTurn] = useState(false)
  if (job.data === undefined) return <Asking error={job.error} />
  const { data } = job
  const { timeZone, units } = book.shop
  const underWay = data.state !== 'done' && data.state !== 'given-up'
  const isWaiting = (step: string) =>
    waiting.some(({ entry }) => entry.kind === 'signoff' && entry.job === data.id && entry.step === step)
  return (
    <div class="job-sheet">
      <p class="no-print">
        <Link href="/cleanouts">{say('All job sheets')}</Link>
      </p>
      <div class="page-head">
        <h1>{data.title}</h1>
        <span class="quiet">{data.plannedOn === null ? '' : sayDay(`${data.plannedOn}T12:00:00Z`, 'UTC')}</span>
      </div>
      <p class="lede">{data.sentence}</p>
      <Totals job={data} units={units} />
      <p class="print-only">
        {say('{shop} · printed from the book; a step signed on paper is signed in the book as well.', {
          shop: book.shop.name,
        })}
      </p>
      {underWay && (
        <div class="buttons">
          <ClaimLine
            claimKey={`job:${data.id}`}
            claim={data.claimedBy}
            sump={data.sump}
            name={data.title}
            timeZone={timeZone}
            isBusy={writing.isBusy}
            write={(items) => void writing.write(items)}
          />
          <button type="button" class="plain" onClick={() => print()}>
            {say('Print')}
          </button>
        </div>
      )}
      {writing.said !== '' && (
        <p class="note" role="status">
          {writing.said}
        </p>
      )}
      {data.steps.length === 0 && (
        <p class="doubt">{say('What this job was opened with makes no sheet. Give it up and plan it anew.')}</p>
      )}
      <ol class="sheet-steps">
        {data.steps.map((step, i) => (
          <SheetStep
            key={step.id}
            step={step}
            ordinal={i + 1}
            isNext={step.id === data.nextStep}
            isWaiting={isWaiting(step.id)}
            isOpen={underWay}
            outOfTurn={outOfTurn}
            isBusy={writing.isBusy}
            shop={book.shop}
            sign={(figures) => {
              const entries = stepEntries(data, step, figures, stampNow())
              void writing.write(entries.map((entry) => ({ entry, label: `${data.name}: ${step.title}` })))
            }}
          />
        ))}
      </ol>
      {data.strays.length > 0 && (
        <p class="quiet">
          {say('Signed, but no step of this sheet: {steps}.', {
            steps: data.strays.map(({ step, by }) => (by === null ? step : `${step} (${by})`)).join(', '),
          })}
        </p>
      )}
      {underWay && (
        <div class="buttons give-up">
          {!outOfTurn && (
            <button type="button" class="plain" onClick={() => setOutOfTurn(true)}>
              {say('A step was done in another order')}
            </button>
          )}
          <button
            type="button"
            class="plain"
            disabled={writing.isBusy}
            onClick={() => {
              if (!confirm(say('Give this job up? What was signed stays in the journal.'))) return
              void writing.write([{ entry: givenUp(data), label: say('{title}: given up', { title: data.title }) }])
            }}
          >
            {say('Give this job up')}
          </button>
        </div>
      )}
      <p class="foot">
        {say(
          'Guidance only: the labels and safety data sheets of fluid and cleaner, the machine’s manual, the suppliers and local rules come first. Order and times are common practice.',
        )}
      </p>
    </div>
  )
}

function Totals({ job: { totals }, units }: { job: Pick<Job, 'totals'>; units: Book['shop']['units'] }) {
  if (totals === null) return null
  const reader = readerOf(units)
  return (
    <dl class="pairs totals">
      <dt>{say('The machine stands')}</dt>
      <dd>{say('about {hours}', { hours: sayHours(totals.downtimeHours, reader) })}</dd>
      <dt>{say('Somebody stands by')}</dt>
      <dd>{say('about {hours}', { hours: sayHours(totals.labourHours, reader) })}</dd>
      <dt>{say('Waste')}</dt>
      <dd>{sayVolume(totals.waste, reader)}</dd>
    </dl>
  )
}

function givenUp({ id, sump }: Pick<Job, 'id' | 'sump'>): Entry {
  const subject = sump === null ? { about: { kind: 'shop' as const } } : { sump }
  return { ...envelope(stampNow()), kind: 'signoff', ...subject, job: id, step: 'given-up' }
}
