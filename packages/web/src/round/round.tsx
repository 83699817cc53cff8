import { message, say } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { Link, useLocation } from 'wouter-preact'
import { useSumps, useToday } from '../api/queries.ts'
import type { Book, SumpNow } from '../api/types.ts'
import { Gradually } from '../parts/gradually.tsx'
import { Said } from '../say/said.tsx'
import { sayWhenShort } from '../say/when.ts'
import { inWalkingOrder } from '../standing/walking-order.ts'
import { CartAgain, CartFirst } from './cart-first.tsx'
import { Jump } from './jump.tsx'
import { Stop } from './stop.tsx'
import type { StopRecord } from './stop-record.ts'
import { catchUp } from './visit.ts'
import { type Done, doneWords, keepWalk, loadWalk, markDone, nextStop, type Walk, walkBegun } from './walk.ts'
import { WalkSum } from './walk-sum.tsx'
import { WhoWrites } from './who-writes.tsx'
import './round.css'

/** The round, once what was written before a crash is known to it. */
export async function openRound() {
  await catchUp()
  return Round
}

/** The walk past the sumps: the list of stops, and the stop one stands at. */
function Round({ book, id }: { book: Book; id: string | null }) {
  const sumps = useSumps()
  const [walk, setWalk] = useState(() => loadWalk(Date.now()))
  const [, go] = useLocation()
  const isCartComing = useCartComing() && id === null
  if (sumps.data === undefined || (isCartComing && sumps.error === null)) {
    return sumps.error === null ? (
      <p class="quiet">{say('Fetching the round …')}</p>
    ) : (
      <p class="fault">{sumps.error.message}</p>
    )
  }
  const stops = sumps.data.toSorted(inWalkingOrder)
  const at = stops.findIndex(({ sump }) => sump === id)

  const move = (next: Walk) => {
    keepWalk(next)
    setWalk(next)
  }
  const toStop = (sump: string) => go(`/round/${encodeURIComponent(sump)}`)
  const leave = (sump: string, what: Done | null, record: StopRecord | null, to?: string) => {
    const next = what === null ? walk : markDone(walk, sump, what, Date.now(), record ?? undefined)
    move(next)
    const stop = nextStop(stops, next, sump)
    go(to ?? (stop === null ? '/round' : `/round/${encodeURIComponent(stop)}`))
    scrollTo(0, 0)
  }

  return (
    <div class={at < 0 ? 'round' : 'round at-stop'}>
      <div class="round-list">
        <StopList stops={stops} walk={walk} here={id} shop={book.shop} restart={() => move(walkBegun(Date.now()))}>
          {id === null && stops.length > 1 && <Jump stops={stops} go={toStop} />}
        </StopList>
      </div>
      {id !== null && at < 0 && <p class="fault">{say('No sump of this book has the id “{id}”.', { id })}</p>}
      {at >= 0 && (
        <Stop
          key={id}
          sump={stops[at]!}
          place={{ at: at + 1, of: stops.length }}
          shop={book.shop}
          instruments={book.instruments ?? []}
          leave={leave}
          stops={stops}
          go={toStop}
        />
      )}
    </div>
  )
}

/** The cart stands above the list: it is waited for a little, so that nothing moves under a thumb, but not for ever. */
function useCartComing(): boolean {
  const { isPending } = useToday()
  const [isLate, setLate] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setLate(true), 2_000)
    return () => clearTimeout(timer)
  }, [])
  return isPending && !isLate
}

interface StopListProps {
  stops: readonly SumpNow[]
  walk: Walk
  here: string | null
  shop: Book['shop']
  restart(): void
  /** Between the way to begin and the list. */
  children: ComponentChildren
}

function StopList({ stops, walk, here, shop, restart, children }: StopListProps) {
  const next = nextStop(stops, walk, null)
  const done = Object.keys(walk.done).length
  const now = new Date().toISOString()
  return (
    <Gradually>
      <div class="page-head">
        <h1>{say('Round')}</h1>
        <span class="quiet">{say('{done} of {all} done', { done, all: stops.length })}</span>
      </div>
      {stops.length === 0 && (
        <p>
          <Said
            text="No sump to walk to yet. <page>Add one under Shop</page>."
            parts={{ page: (inside) => <Link href="/shop">{inside}</Link> }}
          />
        </p>
      )}
      {here === null && stops.length > 0 && (
        <div class="round-start">
          {next !== null && (done === 0 ? <CartFirst /> : <CartAgain />)}
          {next !== null && <WhoWrites />}
          {next === null ? (
            <>
              <p class="note">{say('The round is done: {stops}.', { stops: sayDone(walk) })}</p>
              <WalkSum walk={walk} stops={stops} shop={shop} />
              {stops.length === 1 && (
                <Link class="button" href="/shop#new-sump">
                  {say('Add the next sump')}
                </Link>
              )}
              <Link class="button main" href="/">
                {say('See what is left to do today')}
              </Link>
              <button type="button" onClick={restart}>
                {say('Begin another round')}
              </button>
            </>
          ) : (
            <Link class="button main" href={`/round/${encodeURIComponent(next)}`}>
              {say(done === 0 ? 'Begin with {sump}' : 'Go on with {sump}', {
                sump: stops.find(({ sump }) => sump === next)!.name,
              })}
            </Link>
          )}
        </div>
      )}
      {children}
      {here === null && next !== null && done > 0 && (
        <details class="so-far">
          <summary>{say('What this round came to so far')}</summary>
          <WalkSum walk={walk} stops={stops} shop={shop} />
        </details>
      )}
      {here === null && stops.length > 0 && (
        <p class="no-print">
          <Link class="button plain" href="/round-sheet">
            {say('Round sheet on paper')}
          </Link>
        </p>
      )}
      <ol class="stops">
        {stops.map(({ sump, name, place, lastStrength }) => (
          <li key={sump}>
            <Link href={`/round/${encodeURIComponent(sump)}`} aria-current={sump === here ? 'step' : undefined}>
              <span class="name">{name}</span>
              <span class="what">{walk.done[sump] === undefined ? '' : say(doneWords[walk.done[sump]])}</span>
              <span class="quiet">
                {place}
                {place !== null && lastStrength !== null && ' · '}
                {lastStrength === null ? '' : sayWhenShort(lastStrength.at, { timeZone: shop.timeZone, now })}
              </span>
            </Link>
          </li>
        ))}
      </ol>
    </Gradually>
  )
}

const doneCounts: readonly (readonly [Done, string])[] = [
  ['read', message('{count, plural, one {# read} other {# read}}')],
  ['poured', message('{count, plural, one {# poured} other {# poured}}')],
  ['not poured', message('{count, plural, one {# not poured} other {# not poured}}')],
  ['locked', message('{count, plural, one {# locked} other {# locked}}')],
  ['down', message('{count, plural, one {# down} other {# down}}')],
]

/** "9 read, 2 poured, 1 locked" */
function sayDone({ done }: Walk): string {
  const all = Object.values(done)
  return doneCounts
    .map(([kind, words]) => ({ count: all.filter((what) => what === kind).length, words }))
    .filter(({ count }) => count > 0)
    .map(({ count, words }) => say(words, { count }))
    .join(', ')
}
