import { sayNumber, sayPercent, sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { Refusal } from '../api/client.ts'
import { useSump, useToday } from '../api/queries.ts'
import type { Book, HistoryEntry, SumpPage } from '../api/types.ts'
import { BandLine } from '../band-line/band-line.tsx'
import { write } from '../entry/book-outbox.ts'
import { labelOf, voidEntry, wordsOf } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { Gauge } from '../gauge/gauge.tsx'
import { readerOf, sayBand } from '../say/units.ts'
import { sayWhenShort } from '../say/when.ts'
import { SetAsideForm, TodayLine } from '../today/line.tsx'
import { HistoryChart } from './history-chart.tsx'
import './sumps.css'

/** One sump: where it stands, what to do next, how it got there, and every entry about it. */
export function Sump({ book, id }: { book: Book; id: string }) {
  const answer = useSump(id)
  const today = useToday()
  const [said, setSaid] = useState('')
  if (answer.data === undefined) {
    if (answer.error === null) return <p class="quiet">Looking it up …</p>
    const isUnknown = answer.error instanceof Refusal && answer.error.status === 404
    return <p class="fault">{isUnknown ? `No sump of this book has the id “${id}”.` : answer.error.message}</p>
  }
  const sump = answer.data
  if (sump.bench === undefined) return <p class="fault">No sump of this book has the id “{id}”.</p>
  const { bench, fluid } = sump
  const shop = book.shop
  const item = today.data?.items.find((each) => each.sump === id)
  const now = today.data?.at ?? new Date().toISOString()
  return (
    <div class="sump-page">
      <div class="page-head">
        <h1>{sump.name}</h1>
        <span class="quiet">{[sump.place ?? '', fluid.name].filter((part) => part !== '').join(' · ')}</span>
      </div>
      <p class="lede">{sump.sentence}</p>
      {bench.class !== 'straight-oil' && (
        <div class="standing">
          <BandLine
            band={bench.band}
            target={bench.target}
            now={sump.concentration}
            after={item?.recipe.add == null ? null : (item.recipe.result?.concentration ?? null)}
          />
          <Gauge volume={sump.volume} bench={bench} units={shop.units} />
        </div>
      )}
      <section aria-labelledby="next" class="part">
        <h2 id="next">Next</h2>
        {item === undefined ? (
          <>
            <p>Nothing to do now.</p>
            <Link class="button" href={`/round/${encodeURIComponent(id)}`}>
              Read it now
            </Link>
          </>
        ) : (
          <div class="next-line">
            <TodayLine
              item={item}
              shop={shop}
              at={now}
              ordinal={null}
              wrote={({ entries }) =>
                setSaid(`Written down: ${entries.map((entry) => wordsOf(entry, readerOf(shop.units))).join(', ')}.`)
              }
            />
          </div>
        )}
        <p role="status">{said}</p>
      </section>
      <section aria-labelledby="concentration" class="part">
        <h2 id="concentration">Concentration</h2>
        <HistoryChart entries={sump.history} bench={bench} timeZone={shop.timeZone} name={sump.name} />
      </section>
      <div class="two-parts">
        <section aria-labelledby="sump-journal" class="part">
          <SumpJournal sump={sump} book={book} now={now} />
        </section>
        <section aria-labelledby="known" class="part">
          <h2 id="known">What is known of it</h2>
          <Known sump={sump} book={book} />
        </section>
      </div>
    </div>
  )
}

const shownAtFirst = 20

/** Newest first. Setting an entry aside is asked for first, so that no row carries a button that is hardly ever needed. */
function SumpJournal({ sump, book, now }: { sump: SumpPage; book: Book; now: string }) {
  const [isAll, setAll] = useState(false)
  const [isPicking, setPicking] = useState(false)
  const [aside, setAside] = useState<HistoryEntry | null>(null)
  const newestFirst = sump.history.toReversed()
  const shown = isAll ? newestFirst : newestFirst.slice(0, shownAtFirst)
  const reader = readerOf(book.shop.units)
  const when = (at: string) => sayWhenShort(at, { timeZone: book.shop.timeZone, now })
  const canBeSetAside = ({ withdrawn, kind }: HistoryEntry) => !withdrawn && kind !== 'void'
  const setEntryAside = (entry: HistoryEntry, reason: string) => {
    const withdrawal = voidEntry(entry.entry, reason, sump.sump, stampNow())
    void write([{ entry: withdrawal, label: labelOf(withdrawal, sump.name, reader) }])
    setAside(null)
    setPicking(false)
  }
  return (
    <>
      <div class="journal-head">
        <h2 id="sump-journal">Journal</h2>
        {newestFirst.length > 0 && (
          <button
            type="button"
            class="plain"
            onClick={() => {
              setPicking(!isPicking)
              setAside(null)
            }}
          >
            {isPicking ? 'Leave all as they are' : 'Set an entry aside'}
          </button>
        )}
      </div>
      {newestFirst.length === 0 && <p class="quiet">Nothing has been written down yet.</p>}
      <table class="journal">
        <thead>
          <tr>
            <th>When</th>
            <th>What</th>
            <th>Who</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((entry) => (
            <tr key={entry.entry}>
              <td class="when">{when(entry.at)}</td>
              <td>
                <span class={entry.withdrawn ? 'struck' : ''}>{entry.text}</span>
                {entry.withdrawn && (
                  <span class="quiet"> set aside{entry.reason === null ? '' : `: ${entry.reason}`}</span>
                )}
                {isPicking && aside === null && canBeSetAside(entry) && (
                  <div>
                    <button
                      type="button"
                      class="pick"
                      aria-label={`Set aside: ${entry.text}, ${when(entry.at)}`}
                      onClick={() => setAside(entry)}
                    >
                      Set aside
                    </button>
                  </div>
                )}
                {aside?.entry === entry.entry && (
                  <SetAsideForm
                    what={`${entry.text} of ${when(entry.at)}`}
                    cancel={() => setAside(null)}
                    write={(reason) => setEntryAside(entry, reason)}
                  />
                )}
              </td>
              <td class="who">{entry.by}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {shown.length < newestFirst.length && (
        <button type="button" onClick={() => setAll(true)}>
          Show all {newestFirst.length}
        </button>
      )}
    </>
  )
}

function Known({ sump, book }: { sump: SumpPage; book: Book }) {
  const { bench, fluid } = sump
  const reader = readerOf(book.shop.units)
  const volume = (litres: number | null) => (litres === null ? 'not known' : sayVolume(litres, reader))
  const scale =
    bench.brixChart !== null
      ? 'by its chart'
      : bench.brixFactor === null
        ? 'not known'
        : `${sayNumber(bench.brixFactor, 2)} % per °Brix`
  return (
    <>
      <dl class="pairs">
        <dt>Fluid</dt>
        <dd>{fluid.name}</dd>
        <dt>Strength from °Brix</dt>
        <dd>{scale}</dd>
        <dt>Band</dt>
        <dd>{bench.band === null ? 'not known' : sayBand(bench.band)}</dd>
        <dt>Target</dt>
        <dd>{bench.target === null ? 'not known' : sayPercent(bench.target, reader)}</dd>
        <dt>Full mark</dt>
        <dd>{volume(bench.fillVolume)}</dd>
        <dt>Brim</dt>
        <dd>{volume(bench.capacity)}</dd>
        <dt>Pumps’ suction</dt>
        <dd>{volume(bench.minVolume)}</dd>
        <dt>Level by dip</dt>
        <dd>{bench.dipTable === null ? 'no dip table' : `table of ${bench.dipTable.length} points`}</dd>
      </dl>
      <Link class="button plain no-print" href={`/shop#sump-${encodeURIComponent(sump.sump)}`}>
        Change it under Shop
      </Link>
    </>
  )
}
