import { byMistake, message, say, sayVolume } from '@sumpbook/fluid'
import { type ComponentChildren, Fragment } from 'preact'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { OutOfReach } from '../api/client.ts'
import { useToday } from '../api/queries.ts'
import type { Book, SumpNow, Today as TodayAnswer, TodayItem } from '../api/types.ts'
import { SmallBandLine } from '../band-line/band-line.tsx'
import { write } from '../entry/book-outbox.ts'
import { labelOf, voidEntry, wordsOf } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { CartByStop } from '../parts/cart-by-stop.tsx'
import { Cautions } from '../parts/cautions.tsx'
import { Gradually } from '../parts/gradually.tsx'
import { Said } from '../say/said.tsx'
import { readerOf } from '../say/units.ts'
import { sayDay, sayWhenShort } from '../say/when.ts'
import { AtOnceLines, DueLine, DueLines } from './due.tsx'
import { FoldedLine, fewLines } from './folded-line.tsx'
import { HandoverPart } from './handover.tsx'
import { handoverOf, withoutHandover } from './lede.ts'
import { TodayLine, type WrittenDown } from './line.tsx'
import { NotCounted } from './not-counted.tsx'
import { PutOffLines } from './put-off.tsx'
import './today.css'

/** What to do now, most consequence first; then where every other sump stands. */
export function Today({ book }: { book: Book }) {
  const today = useToday()
  if (today.data === undefined) return <NoAnswer error={today.error} again={() => void today.refetch()} />
  return <TodayOf book={book} data={today.data} />
}

function TodayOf({ book, data }: { book: Book; data: TodayAnswer }) {
  const [written, setWritten] = useState<WrittenDown | null>(null)
  // Beside the lede where there is room; folded on a phone.
  const [isCartOpen] = useState(() => matchMedia('(min-width: 800px)').matches)
  const shop = { ...book.shop, ...data.shop }
  const note = handoverOf(data.lede)
  const shared = sharedCautions(data)
  const reader = readerOf(shop.units)
  const time = { at: data.at, timeZone: shop.timeZone, shiftEnds: data.shift.ends }
  // What is no news is folded where the list is long.
  const isLong = data.items.length > fewLines
  const shown = data.items.filter(({ isNew, exempt }) => !isLong || isNew || exempt)
  const folded = data.items.filter((item) => !shown.includes(item))
  const [isListDrawn, setListDrawn] = useState(false)
  const hasNews = [...data.items, ...data.due].some(({ isNew }) => isNew)
  const lineOf = (item: TodayItem) => ({
    shop,
    at: data.at,
    wrote: setWritten,
    puttable: item.exempt || item.condition === 'unread' ? null : { line: item, time },
  })
  return (
    <div class="today">
      <div class="page-head">
        <h1>{say('Today')}</h1>
        <span class="quiet">
          {book.demo && `${say('all invented')} · `}
          {sayDay(data.at, shop.timeZone)}
        </span>
      </div>
      <div class="opening">
        <div>
          <p class="lede">{withAmounts(data)}</p>
          <NotCounted />
          {note !== null && <p class="handover">{note}</p>}
          <Cautions cautions={[...shared]} />
        </div>
        <CartByStop today={data} isOpen={isCartOpen} least={2} />
      </div>
      {data.quarantined > 0 && (
        <p class="doubt">
          <Said
            text="{count, plural, one {One entry names a sump or a thing that this book does not know yet, and counts nowhere until it does.} other {# entries name a sump or a thing that this book does not know yet, and count nowhere until it does.}} See the <journal>journal</journal>."
            values={{ count: data.quarantined }}
            parts={{ journal: (inside) => <Link href="/journal">{inside}</Link> }}
          />
        </p>
      )}
      <AtOnceLines due={data.due} reader={reader} time={time} wrote={setWritten} />
      <section aria-labelledby="to-do" class="to-do">
        <h2 id="to-do" class="only-read">
          {say('To do')}
        </h2>
        <Gradually whenWhole={() => setListDrawn(true)}>
          {shown.map((item, i) => (
            <TodayLine key={item.sump} item={item} ordinal={i + 1} said={shared} {...lineOf(item)} />
          ))}
        </Gradually>
        {isListDrawn && folded.length > 0 && <h2>{say('Still open')}</h2>}
        {(isListDrawn ? folded : []).map((item) => (
          <FoldedLine
            key={item.sump}
            name={item.name}
            headline={item.words.headline}
            since={sayWhenShort(item.since, { timeZone: shop.timeZone, now: data.at })}
          >
            <TodayLine item={item} ordinal={null} said={shared} {...lineOf(item)} />
          </FoldedLine>
        ))}
        {isListDrawn && data.round !== null && <RoundLine round={data.round} />}
      </section>
      {isListDrawn && (
        <Gradually>
          <DueLines due={data.due} reader={reader} time={time} wrote={setWritten} />
          {data.later !== null && (
            <details class="later" open={!hasNews}>
              <summary>{say('Later')}</summary>
              <p>{data.later.sentence}</p>
              {data.later.items.map((item) => (
                <TodayLine key={item.sump} item={item} ordinal={null} said={shared} {...lineOf(item)} />
              ))}
              {data.later.due.map((due) => (
                <DueLine key={due.key} due={due} reader={reader} time={time} wrote={setWritten} />
              ))}
            </details>
          )}
          <PutOffLines
            putOff={data.putOff}
            time={time}
            write={(name, build) => {
              const entries = build(stampNow())
              void write(entries.map((entry) => ({ entry, label: labelOf(entry, name, reader) }))).then((sent) =>
                setWritten({ name, entries, sent }),
              )
            }}
          />
          <HandoverPart time={time} />
          {data.calm.length > 0 && (
            <section aria-labelledby="calm" class="calm">
              <h2 id="calm">{data.items.length === 0 && data.round === null ? say('Every sump') : say('In order')}</h2>
              {data.calm.map((sump) => (
                <CalmLine key={sump.sump} sump={sump} />
              ))}
            </section>
          )}
          <p class="no-print">
            <Link class="button plain" href="/round-sheet">
              {say('Round sheet on paper')}
            </Link>
          </p>
          <p class="foot">
            {say(
              '● now, with its 90 % interval, ○ where it is outside its band · ◇ after pouring · dotted arrow: in a week if nothing is done · the shaded strip is the band, its upright the target. Guidance only: the fluid’s label and safety data sheet, the supplier and local rules come first.',
            )}
          </p>
        </Gradually>
      )}
      {written !== null && <JustWritten written={written} units={shop.units} close={() => setWritten(null)} />}
    </div>
  )
}

/** Sumps that are merely due to be read are one line, and one walk. */
function RoundLine({ round }: { round: NonNullable<TodayAnswer['round']> }) {
  return (
    <article class="due-line" aria-label={say('The round')}>
      <p class="headline">{round.sentence}</p>
      <p class="why">{round.items.map(({ name }) => name).join(' · ')}</p>
      <div class="buttons">
        <Link class="button" href="/round">
          {say('Walk the round')}
        </Link>
      </div>
    </article>
  )
}

function NoAnswer({ error, again }: { error: Error | null; again(): void }) {
  if (error === null) return <p class="quiet">{say('Working out the day …')}</p>
  return (
    <p class="fault" role="alert">
      {error instanceof OutOfReach ? say('The book is out of reach: no answer from its server.') : error.message}{' '}
      <button type="button" onClick={again}>
        {say('Try again')}
      </button>
    </p>
  )
}

/** What two recipes or more have to mind: it stands once, before them. */
function sharedCautions({ items }: TodayAnswer): ReadonlySet<string> {
  const once = new Set<string>()
  const shared = new Set<string>()
  for (const caution of items.flatMap(({ words }) => words.cautions)) (once.has(caution) ? shared : once).add(caution)
  return shared
}

/** The lede with its amounts set off, as far as they are the cart's. */
function withAmounts({ lede, cart, shop }: TodayAnswer): ComponentChildren {
  const reader = readerOf(shop.units)
  const amounts = [...cart.waters.map(({ volume }) => volume), ...cart.concentrates.map(({ litres }) => litres)].map(
    (litres) => sayVolume(litres, reader),
  )
  const words = withoutHandover(lede)
  if (amounts.length === 0) return words
  const plain = amounts.map((text) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|')
  return words
    .split(new RegExp(`(?<![\\d.,’])(${plain})(?![\\d\\w])`))
    .map((part, i) => (i % 2 === 1 ? <strong class="amount">{part}</strong> : <Fragment>{part}</Fragment>))
}

function CalmLine({ sump }: { sump: SumpNow }) {
  const { bench, concentration } = sump
  return (
    <div class="calm-line">
      <h3>
        <Link href={`/sumps/${encodeURIComponent(sump.sump)}`}>{sump.name}</Link>
      </h3>
      <p>
        {sump.sentence} {sump.ahead.crossing} {sump.ahead.check}
      </p>
      {bench.class === 'straight-oil' ? (
        <span />
      ) : (
        <SmallBandLine
          band={bench.band}
          target={bench.target}
          now={concentration}
          after={null}
          inAWeek={sump.inAWeek?.concentration.mean ?? null}
        />
      )}
    </div>
  )
}

const fateWords: Record<WrittenDown['sent'], string> = {
  taken: message('Written down'),
  held: message('In the book, waits for a keeper'),
  waiting: message('Kept on this device'),
  'only-here': message('Held by this open page only'),
  refused: message('Not taken by the book'),
}

/** What was just written, with the way back: an entry is never edited, it is withdrawn. */
function JustWritten({
  written,
  units,
  close,
}: {
  written: WrittenDown
  units: TodayAnswer['shop']['units']
  close(): void
}) {
  const { name, entries, sent } = written
  const reader = readerOf(units)
  const what = entries.map((entry) => wordsOf(entry, reader)).join(', ')
  const takeBack = async () => {
    const stamp = stampNow()
    const voids = entries.map((entry) =>
      voidEntry(entry.id, byMistake, (entry.sump as string | undefined) ?? null, stamp),
    )
    await write(voids.map((entry) => ({ entry, label: labelOf(entry, name, reader) })))
    close()
  }
  return (
    <div class="just-written arrives" role="status">
      <p>
        {say(fateWords[sent])}: {name}, {what}.
      </p>
      {sent !== 'refused' && (
        <button type="button" onClick={() => void takeBack()}>
          {say('Take it back')}
        </button>
      )}
      <button type="button" class="plain" onClick={close}>
        {say('Close')}
      </button>
    </div>
  )
}
