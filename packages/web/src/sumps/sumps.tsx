import { say } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import { useSumps } from '../api/queries.ts'
import type { Book } from '../api/types.ts'
import { SmallBandLine } from '../band-line/band-line.tsx'
import { Said } from '../say/said.tsx'
import { sayWhen } from '../say/when.ts'
import './sumps.css'

/** Every sump in walking order, with where it stands. */
export function Sumps({ book }: { book: Book }) {
  const sumps = useSumps()
  if (sumps.data === undefined) {
    return sumps.error === null ? (
      <p class="quiet">{say('Fetching the sumps …')}</p>
    ) : (
      <p class="fault">{sumps.error.message}</p>
    )
  }
  const now = new Date().toISOString()
  return (
    <div class="sumps">
      <div class="page-head">
        <h1>{say('Sumps')}</h1>
        <span class="quiet">{say('{count}, in walking order', { count: sumps.data.length })}</span>
      </div>
      {sumps.data.length === 0 && (
        <p>
          <Said
            text="None yet. <page>Add one under Shop</page>."
            parts={{ page: (inside) => <Link href="/shop">{inside}</Link> }}
          />
        </p>
      )}
      <h2 class="only-read">{say('Every sump')}</h2>
      {sumps.data.map(({ sump, name, place, fluid, sentence, bench, concentration, inAWeek, ahead, lastStrength }) => (
        <div class="sump-line" key={sump}>
          <h3>
            <Link href={`/sumps/${encodeURIComponent(sump)}`}>{name}</Link>
          </h3>
          <div class="words">
            <p>
              {sentence} {ahead.check}
            </p>
            <p class="quiet">
              {[place ?? '', fluid.name].filter((part) => part !== '').join(' · ')}
              {lastStrength !== null &&
                ` · ${say('read {when}', { when: sayWhen(lastStrength.at, { timeZone: book.shop.timeZone, now }) })}`}
            </p>
          </div>
          {bench.class === 'straight-oil' ? (
            <span />
          ) : (
            <SmallBandLine
              band={bench.band}
              target={bench.target}
              now={concentration}
              after={null}
              inAWeek={inAWeek?.concentration.mean ?? null}
            />
          )}
        </div>
      ))}
    </div>
  )
}
