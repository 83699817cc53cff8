import { sayCount, sayHardness, sayNumber, sayPercent, sayVolume, trueMarks } from '@sumpbook/fluid'
import { useEffect, useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { Refusal } from '../api/client.ts'
import { useOutlook, useSump } from '../api/queries.ts'
import type { Book, Entry, HistoryEntry, Outlook, SumpPage } from '../api/types.ts'
import { BandLine } from '../band-line/band-line.tsx'
import { SumpDoses } from '../doses/sump-doses.tsx'
import { Doubts, SettledDoubts } from '../doubts/doubts.tsx'
import { useWaiting, write } from '../entry/book-outbox.ts'
import { isPour, labelOf, voidEntry, wordsOf } from '../entry/entries.ts'
import type { Stamp } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { Gauge } from '../gauge/gauge.tsx'
import { readerOf, sayBand } from '../say/units.ts'
import { sayWhenShort } from '../say/when.ts'
import { inTrueLitres, isOtherMark } from '../standing/true-litres.ts'
import { SumpTests } from '../tests/sump-tests.tsx'
import { SetAsideForm, TodayLine } from '../today/line.tsx'
import { ConcentrationCourse, daysUntilDry, HardnessCourse } from './course.tsx'
import { hardnessSaid } from './fan-layout.ts'
import { Losses } from './losses.tsx'
import { WhatIf } from './what-if.tsx'
import './sumps.css'

const day = 86_400_000
const periods = [
  ['13 weeks', 91],
  ['a year', 366],
  ['all', 3660],
] as const

/** One sump: where it stands, what does not fit, what to do next, how it got there and where it goes, and every entry about it. */
export function Sump({ book, id }: { book: Book; id: string }) {
  const answer = useSump(id)
  const [days, setDays] = useState(91)
  const outlook = useOutlook(id, days)
  if (answer.data === undefined) {
    if (answer.error === null) return <p class="quiet">Looking it up …</p>
    const isUnknown = answer.error instanceof Refusal && answer.error.status === 404
    return <p class="fault">{isUnknown ? `No sump of this book has the id “${id}”.` : answer.error.message}</p>
  }
  const parts = {
    book,
    sump: answer.data,
    outlook: outlook.data ?? null,
    now: answer.data.asOf,
  }
  return <SumpOf {...parts} days={days} setDays={setDays} />
}

interface SumpParts {
  book: Book
  sump: SumpPage
  outlook: Outlook | null
  now: string
}

function SumpOf({
  book,
  sump,
  outlook,
  now,
  days,
  setDays,
}: SumpParts & { days: number; setDays(days: number): void }) {
  const { bench, fluid, concentration } = sump
  const { shop } = book
  const reader = readerOf(shop.units)
  const writing = useWriting()
  const waiting = useWaiting().some(({ entry }) => entry.sump === sump.sump)
  const held = inTrueLitres(sump)
  useEffect(() => {
    // The part that an address names is there only once the answers are.
    if (outlook !== null && location.hash === '#doubts') document.getElementById('doubts')?.scrollIntoView()
  }, [outlook === null])
  const writeDown = (build: (stamp: Stamp) => Entry[]) =>
    void writing.write(build(stampNow()).map((entry) => ({ entry, label: labelOf(entry, sump.name, reader) })))
  const isOil = bench.class === 'straight-oil'
  const doubts = outlook === null || isOil ? null : { outlook, sump, book, isBusy: writing.isBusy, write: writeDown }
  return (
    <div class="sump-page">
      <div class="page-head">
        <h1>{sump.name}</h1>
        <span class="quiet">{[sump.place ?? '', fluid.name].filter((part) => part !== '').join(' · ')}</span>
      </div>
      <p class="lede">{sump.sentence}</p>
      <p class="ahead">
        {sump.ahead.drift} {sump.ahead.crossing} {sump.ahead.check}
      </p>
      {!isOil && (
        <div class="standing">
          <BandLine
            band={bench.band}
            target={bench.target}
            now={concentration}
            after={isPour(sump.recipe) ? (sump.recipe.result?.concentration ?? null) : null}
            inAWeek={sump.inAWeek?.concentration.mean ?? null}
          />
          <Gauge volume={held.volume} bench={held.bench} units={shop.units} />
        </div>
      )}
      {waiting && (
        <p class="note">
          Something about it is on this device only: it is counted above, and in the days ahead once it is sent.
        </p>
      )}
      <p role="status" class="said">
        {writing.said}
      </p>
      {doubts !== null && <Doubts {...doubts} />}
      <p class="to-why no-print">
        <Link class="button" href={`/sumps/${encodeURIComponent(sump.sump)}/why`}>
          Something wrong with it?
        </Link>
        <Link class="button plain" href={`/cleanouts/plan?sump=${encodeURIComponent(sump.sump)}`}>
          Plan a cleanout
        </Link>
      </p>
      <Next sump={sump} shop={shop} now={now} />
      {!isOil && (
        <Courses
          sump={sump}
          outlook={outlook}
          timeZone={shop.timeZone}
          days={days}
          setDays={setDays}
          units={shop.units}
        />
      )}
      {!isOil && <SumpTests book={book} sump={sump.sump} name={sump.name} now={now} />}
      {!isOil && <SumpDoses book={book} sump={sump.sump} name={sump.name} now={now} />}
      {!isOil && <WhatIf book={book} sump={sump.sump} today={now} />}
      {doubts !== null && <SettledDoubts {...doubts} />}
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

/** What to do next, on the list or not: what a fill to the mark would take is asked for before its day as well. */
function Next({ sump, shop, now }: Pick<SumpParts, 'sump' | 'now'> & { shop: Book['shop'] }) {
  const [said, setSaid] = useState('')
  // What does not fit has a part of its own, with all there is to do about it.
  if (sump.doubts.length > 0) return null
  const isInOrder = sump.condition === 'in-order' || sump.condition === 'straight-oil'
  return (
    <section aria-labelledby="next" class="part">
      <h2 id="next">Next</h2>
      {isInOrder && (
        <p>{isPour(sump.recipe) ? 'Nothing to do now. Filled to its mark it would take:' : 'Nothing to do now.'}</p>
      )}
      {isInOrder && !isPour(sump.recipe) ? (
        <Link class="button" href={`/round/${encodeURIComponent(sump.sump)}`}>
          Read it now
        </Link>
      ) : (
        <div class="next-line">
          <TodayLine
            item={sump}
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
  )
}

interface CoursesProps extends Pick<SumpParts, 'sump' | 'outlook'> {
  timeZone: string
  units: Book['shop']['units']
  days: number
  setDays(days: number): void
}

/** Its history and the days ahead: concentration, minerals, and what leaves it. */
function Courses({ sump, outlook, timeZone, units, days, setDays }: CoursesProps) {
  const first = sump.history[0]
  if (outlook === null || first === undefined) {
    return (
      <section aria-labelledby="concentration" class="part">
        <h2 id="concentration">Concentration</h2>
        <p class="quiet">{first === undefined ? 'Nothing has been written down yet.' : 'Working out its history …'}</p>
      </section>
    )
  }
  const from = Math.max(Date.parse(outlook.at) - days * day, Date.parse(first.at) - day)
  const of = { sump, outlook, from, timeZone }
  return (
    <>
      <section aria-labelledby="concentration" class="part">
        <h2 id="concentration">Concentration</h2>
        <fieldset class="periods">
          <legend class="only-read">Period</legend>
          {periods.map(([words, length]) => (
            <button type="button" class="plain" aria-pressed={days === length} onClick={() => setDays(length)}>
              {words}
            </button>
          ))}
        </fieldset>
        <ConcentrationCourse {...of} />
      </section>
      <div class="two-parts">
        <section aria-labelledby="minerals" class="part">
          <h2 id="minerals">Minerals</h2>
          <p>{mineralWords(sump, outlook, units)}</p>
          <HardnessCourse {...of} />
        </section>
        <section aria-labelledby="losses" class="part">
          <h2 id="losses">What leaves it, and what would hold it</h2>
          <Losses sump={sump} outlook={outlook} units={units} />
        </section>
      </div>
    </>
  )
}

/** Hardness now and ahead, its limit, and whether it was ever read. */
function mineralWords({ history, bench }: SumpPage, outlook: Outlook, units: Book['shop']['units']): string {
  const reader = readerOf(units)
  const { now, limits } = outlook
  const last = daysUntilDry(outlook, bench).at(-1)
  const high = limits.hardness?.high ?? null
  const isRead = history.some((entry) => hardnessSaid(entry) !== null && !entry.withdrawn)
  return [
    `${sayHardness(now.hardness, reader)}.`,
    last === undefined
      ? ''
      : `With nothing done ${sayNumber(last.hardness.mean, 0, reader)} ppm in ${sayCount(last.days, 'day', 'days')}.`,
    high === null ? '' : `Its limit is ${sayNumber(high, 0, reader)} ppm.`,
    isRead ? '' : 'Nobody has read it yet: it is reckoned from the waters poured.',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
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
  const marks = trueMarks(bench, sump.mark)
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
        <dd>
          {volume(bench.fillVolume)}
          {isOtherMark(bench.fillVolume, marks.fillVolume) && `, reckoned as ${volume(marks.fillVolume)}`}
        </dd>
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
