import { say, sayList } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import type { ShopOfBook, SumpNow } from '../api/types.ts'
import { useOutbox } from '../entry/book-outbox.ts'
import { useObserved } from '../offline/observed.ts'
import { waitingPhotos } from '../photo/waiting-count.ts'
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
      <h2 id="walk-sum">{say('This round')}</h2>
      <dl class="pairs">
        <dt>{say('Read')}</dt>
        <dd>
          {readHere.length === 0
            ? say('none')
            : say('{count, plural, one {# sump} other {# sumps}}', { count: readHere.length })}
          {readHere.length > 0 && (
            <ul>
              {readHere.map(({ sump, name }) => (
                <li key={sump}>
                  {name}:{' '}
                  {records[sump]!.hasPhoto
                    ? say('{read}, with a photo', { read: records[sump]!.read })
                    : records[sump]!.read}
                </li>
              ))}
            </ul>
          )}
        </dd>
        <dt>{say('Poured')}</dt>
        <dd>{poured === '' ? say('nothing') : poured}</dd>
        <dt>{say('Passed by')}</dt>
        <dd>
          {passedBy.length === 0
            ? say('none')
            : sayList(passedBy.map(({ sump, name }) => `${name} (${records[sump]!.why})`))}
        </dd>
        <dt>{say('Does not fit')}</dt>
        <dd>
          {doubted.length === 0
            ? say('nothing')
            : doubted.map(({ sump, name, doubts }) => (
                <p key={sump} class="doubt">
                  <Link href={`/sumps/${encodeURIComponent(sump)}`}>{name}</Link>: {doubts[0]!.text}
                </p>
              ))}
        </dd>
        <dt>{say('To be sent')}</dt>
        <dd>
          {waits + photos + refused === 0
            ? say('all of it is in the book')
            : [
                waits === 0
                  ? ''
                  : say('{count, plural, one {# entry waits on this device} other {# entries wait on this device}}', {
                      count: waits,
                    }),
                photos === 0
                  ? ''
                  : say('{count, plural, one {# photo waits too} other {# photos wait too}}', { count: photos }),
                refused === 0
                  ? ''
                  : say(
                      '{count, plural, one {# entry was not taken: see the top of the page} other {# entries were not taken: see the top of the page}}',
                      { count: refused },
                    ),
              ]
                .filter((part) => part !== '')
                .join('; ')}
        </dd>
      </dl>
      <p>
        <Link class="button" href="/#handover">
          {say('Hand over to the next shift')}
        </Link>
      </p>
    </section>
  )
}
