import { sayCount, sayList } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import type { ShopOfBook, SumpNow } from '../api/types.ts'
import { useOutbox } from '../entry/book-outbox.ts'
import { useObserved } from '../offline/observed.ts'
import { waitingPhotos } from '../photo/waiting-photos.ts'
import { readerOf } from '../say/units.ts'
import { sayPoured } from './stop-record.ts'
import type { Walk } from './walk.ts'

/** What the walk came to: read, poured, passed by and why, what waits, what does not fit. */
export function WalkSum({ walk, stops, shop }: { walk: Walk; stops: readonly SumpNow[]; shop: ShopOfBook }) {
  const { all } = useOutbox()
  const photos = useObserved(waitingPhotos)
  const reader = readerOf(shop.units)
  const done = stops.filter(({ sump }) => walk.done[sump] !== undefined)
  if (done.length === 0) return null
  const records = walk.records ?? {}
  const readHere = done.filter(({ sump }) => (records[sump]?.read ?? '') !== '')
  const passedBy = done.filter(({ sump }) => (records[sump]?.why ?? '') !== '')
  const doubted = done.filter(({ doubts }) => doubts.length > 0)
  const mine = new Set(Object.values(records).flatMap(({ entries }) => entries))
  const here = all.filter(({ entry, taken }) => mine.has(entry.id) && taken === null)
  const refused = here.filter(({ problem }) => problem !== null).length
  const waits = here.length - refused
  const poured = sayPoured(
    done.flatMap(({ sump }) => (records[sump] === undefined ? [] : [records[sump]])),
    reader,
  )
  return (
    <section class="walk-sum" aria-labelledby="walk-sum">
      <h2 id="walk-sum">This round</h2>
      <dl class="pairs">
        <dt>Read</dt>
        <dd>
          {readHere.length === 0 ? 'none' : sayCount(readHere.length, 'sump', 'sumps')}
          {readHere.length > 0 && (
            <ul>
              {readHere.map(({ sump, name }) => (
                <li key={sump}>
                  {name}: {records[sump]!.read}
                  {records[sump]!.hasPhoto && ', with a photo'}
                </li>
              ))}
            </ul>
          )}
        </dd>
        <dt>Poured</dt>
        <dd>{poured === '' ? 'nothing' : poured}</dd>
        <dt>Passed by</dt>
        <dd>
          {passedBy.length === 0
            ? 'none'
            : sayList(passedBy.map(({ sump, name }) => `${name} (${records[sump]!.why})`))}
        </dd>
        <dt>Does not fit</dt>
        <dd>
          {doubted.length === 0
            ? 'nothing'
            : doubted.map(({ sump, name, doubts }) => (
                <p key={sump} class="doubt">
                  <Link href={`/sumps/${encodeURIComponent(sump)}`}>{name}</Link>: {doubts[0]!.text}
                </p>
              ))}
        </dd>
        <dt>To be sent</dt>
        <dd>
          {waits + photos + refused === 0
            ? 'all of it is in the book'
            : [
                waits === 0 ? '' : `${sayCount(waits, 'entry waits', 'entries wait')} on this device`,
                photos === 0 ? '' : `${sayCount(photos, 'photo waits', 'photos wait')} too`,
                refused === 0
                  ? ''
                  : `${sayCount(refused, 'entry was', 'entries were')} not taken: see the top of the page`,
              ]
                .filter((part) => part !== '')
                .join('; ')}
        </dd>
      </dl>
      <p>
        <Link class="button" href="/#handover">
          Hand over to the next shift
        </Link>
      </p>
    </section>
  )
}
