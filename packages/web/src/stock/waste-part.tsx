import { message, say, sayNumber, sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { useSumps } from '../api/queries.ts'
import type { Book, Entry, Units } from '../api/types.ts'
import { useWriting } from '../entry/use-writing.ts'
import { DayField } from '../fields/fields.tsx'
import { Gauge } from '../gauge/gauge.tsx'
import { Cautions } from '../parts/cautions.tsx'
import { readerOf } from '../say/units.ts'
import '../today/line.css'
import { useWaste, type WasteContainerNow } from './answers.ts'
import { sayDayText, withoutName } from './say-stock.ts'
import { sayWritten } from './say-written.ts'
import { ContainerForm, DocumentForm, type WasteAct, WasteForm } from './waste-forms.tsx'

/** Where waste waits, until when, and whether what the sumps gave came there. */
export function WastePart({ book }: { book: Book }) {
  const [days, setDays] = useState<{ from: string; to: string } | null>(null)
  const answer = useWaste(days)
  if (answer.data === undefined) {
    return answer.error === null ? (
      <p class="quiet">{say('One moment …')}</p>
    ) : (
      <p class="fault">{answer.error.message}</p>
    )
  }
  const { containers, balance, unmeasured, from, to, today } = answer.data
  const shared = sharedCautions(containers)
  const isTurned = days !== null && days.from > days.to
  return (
    <>
      {containers.length === 0 && (
        <p class="intro">
          {say(
            'Used emulsion, skimmed oil, sludge: set up where each of them waits, and the book counts how full it is and how long it may wait.',
          )}
        </p>
      )}
      {containers.map((container) => (
        <OneContainer key={container.id} container={withoutShared(container, shared)} book={book} today={today} />
      ))}
      <Cautions cautions={shared} />
      <NewContainer
        units={book.shop.units}
        today={today}
        taken={new Set(containers.map(({ id }) => id))}
        isFirst={containers.length === 0}
      />
      <section class="part" aria-labelledby="waste-balance">
        <h2 id="waste-balance">{say('What the sumps gave')}</h2>
        <div class="waste-days">
          <DayField
            label={say('From')}
            value={from}
            max={today}
            onInput={(day) => day !== '' && setDays({ from: day, to })}
            fault={isTurned ? say('Found a first day after the last; expected one before it.') : null}
          />
          <DayField
            label={say('To')}
            value={to}
            max={today}
            onInput={(day) => day !== '' && setDays({ from, to: day })}
          />
        </div>
        {balance.length === 0 && <p>{say('Nothing left the sumps or was stored in these days.')}</p>}
        <ul class="says">
          {balance.map(({ kind, says, outcome }) => (
            <li key={kind} class={outcome === 'agrees' ? '' : 'unexplained'}>
              {says}
            </li>
          ))}
          {unmeasured !== null && <li>{unmeasured}</li>}
        </ul>
      </section>
    </>
  )
}

/** What is to be minded at every container is said once. */
const sharedCautions = ([first, ...others]: readonly WasteContainerNow[]): string[] =>
  (first?.cautions ?? []).filter((caution) => others.every(({ cautions }) => cautions.includes(caution)))

const withoutShared = (container: WasteContainerNow, shared: readonly string[]): WasteContainerNow => ({
  ...container,
  cautions: container.cautions.filter((caution) => !shared.includes(caution)),
})

const acts: readonly (readonly [WasteAct, string])[] = [
  ['store', message('Put in')],
  ['pickup', message('Fetched')],
  ['level', message('Level read')],
  ['settings', message('Settings')],
]

function OneContainer({ container, book, today }: { container: WasteContainerNow; book: Book; today: string }) {
  const [act, setAct] = useState<WasteAct | null>(null)
  const writing = useWriting()
  const sumps = useSumps()
  const { units } = book.shop
  const { id, name, isSetUp, stream, code, place, capacity, litres, clock, full } = container
  const write = async (entries: Entry[]) => {
    const items = entries.map((entry) => ({ entry, label: sayWritten(entry, name) }))
    if (await writing.write(items)) setAct(null)
  }
  return (
    <section class="stock-fluid" id={`waste-${id}`} aria-label={name}>
      <div class="waste-head">
        <h2>{name}</h2>
        {stream !== null && stream !== name && <span class="quiet">{stream}</span>}
        {code !== null && <span class="tag plain">{code}</span>}
        {place !== null && <span class="quiet">{place}</span>}
        {!isSetUp && <span class="tag do">{say('not set up')}</span>}
      </div>
      <div class="waste-body">
        {capacity !== null && (
          <Gauge
            volume={{ mean: litres, low90: litres, high90: litres }}
            bench={{ capacity, fillVolume: null, minVolume: null }}
            units={units}
          />
        )}
        <div>
          <p class="stock-sentence">{withoutName(container.sentence, name)}</p>
          {(clock !== null && clock.daysLeft < 15) || (full !== null && full >= 90) ? (
            <p>
              <span class="tag do">{say('call the carrier')}</span>
            </p>
          ) : null}
          <p>{container.term}</p>
          {container.doubts.length > 0 && (
            <ul class="stock-doubts" aria-label={say('What does not agree')}>
              {container.doubts.map((doubt) => (
                <li>{doubt}</li>
              ))}
            </ul>
          )}
          <Cautions cautions={container.cautions} />
        </div>
      </div>
      <Missing container={container} units={units} today={today} isBusy={writing.isBusy} write={write} />
      {act === null ? (
        <div class="buttons">
          {acts.map(([one, words]) => (
            <button
              type="button"
              class={one === 'settings' ? 'plain' : ''}
              aria-label={`${say(words)}: ${name}`}
              onClick={() => {
                setAct(one)
                writing.hush()
              }}
            >
              {say(words)}
            </button>
          ))}
        </div>
      ) : (
        <WasteForm
          key={act}
          act={act}
          container={container}
          thing={book.wasteContainers?.find((thing) => thing.id === id)}
          sumps={sumps.data ?? []}
          units={units}
          today={today}
          isBusy={writing.isBusy}
          write={(entries) => void write(entries)}
          cancel={() => setAct(null)}
        />
      )}
      <p role="status">{writing.said}</p>
      <Written container={container} units={units} />
    </section>
  )
}

interface MissingProps {
  container: WasteContainerNow
  units: Units
  today: string
  isBusy: boolean
  write(entries: Entry[]): Promise<void>
}

/** Pickups whose document has not come. */
function Missing({ container, units, today, isBusy, write }: MissingProps) {
  const [open, setOpen] = useState<string | null>(null)
  return (
    <>
      {container.pickups
        .filter(({ document }) => document === null)
        .map(({ entry, on, litres }) => (
          <div key={entry} class="missing-document">
            <p>
              <span class="tag do">{say('document missing')}</span>{' '}
              {litres === null
                ? say('Fetched {day}.', { day: sayDayText(on) })
                : say('Fetched {day}, {volume}.', { day: sayDayText(on), volume: sayVolume(litres, readerOf(units)) })}
            </p>
            {open === entry ? (
              <DocumentForm
                container={container.id}
                pickup={entry}
                units={units}
                today={today}
                isBusy={isBusy}
                write={(entries) => void write(entries).then(() => setOpen(null))}
                cancel={() => setOpen(null)}
              />
            ) : (
              <button type="button" onClick={() => setOpen(entry)}>
                {say('Write its number')}
              </button>
            )}
          </div>
        ))}
    </>
  )
}

/** What was put in and fetched in the days asked for. */
function Written({ container, units }: { container: WasteContainerNow; units: Units }) {
  const reader = readerOf(units)
  const amount = (litres: number | null, kilograms: number | null) =>
    [litres === null ? '' : sayVolume(litres, reader), kilograms === null ? '' : `${sayNumber(kilograms, 0)} kg`]
      .filter((part) => part !== '')
      .join(', ') || say('no amount')
  return (
    <details>
      <summary>{say('What was put in and fetched')}</summary>
      <ul class="says">
        {container.pickups.map(({ entry, on, litres, kilograms, document, code }) => (
          <li key={entry}>
            <Link href={`/journal/${entry}`}>{sayDayText(on)}</Link>:{' '}
            {say('fetched {amount}', { amount: amount(litres, kilograms) })}
            {code === null ? '' : `, ${code}`},{' '}
            {document === null ? say('document missing') : say('document {document}', { document })}
          </li>
        ))}
        {container.stored.map(({ entry, on, litres, kilograms }) => (
          <li key={entry}>
            <Link href={`/journal/${entry}`}>{sayDayText(on)}</Link>:{' '}
            {say('put in {amount}', { amount: amount(litres, kilograms) })}
          </li>
        ))}
      </ul>
      {container.pickups.length + container.stored.length === 0 && <p class="quiet">{say('Nothing in these days.')}</p>}
    </details>
  )
}

function NewContainer({
  units,
  today,
  taken,
  isFirst,
}: {
  units: Units
  today: string
  taken: ReadonlySet<string>
  isFirst: boolean
}) {
  const [isOpen, setOpen] = useState(false)
  const writing = useWriting()
  if (!isOpen) {
    return (
      <p class="new-container">
        <button type="button" class={isFirst ? 'main' : ''} onClick={() => setOpen(true)}>
          {say('Set up a waste container')}
        </button>
      </p>
    )
  }
  return (
    <ContainerForm
      units={units}
      today={today}
      taken={taken}
      isBusy={writing.isBusy}
      write={async (entries) => {
        const items = entries.map((entry) => ({ entry, label: say('A waste container') }))
        if (await writing.write(items)) setOpen(false)
      }}
      cancel={() => setOpen(false)}
    />
  )
}
