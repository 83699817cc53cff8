import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Book, SumpPage } from '../api/types.ts'
import { isPour, wordsOf } from '../entry/entries.ts'
import { readerOf } from '../say/units.ts'
import { TodayLine } from '../today/line.tsx'

/** What to do next, on the list or not: what a fill to the mark would take is asked for before its day as well. */
export function NextPart({ sump, shop, now }: { sump: SumpPage; shop: Book['shop']; now: string }) {
  const [said, setSaid] = useState('')
  // What does not fit has a part of its own, with all there is to do about it.
  if (sump.doubts.length > 0) return null
  const isInOrder = sump.condition === 'in-order' || sump.condition === 'straight-oil'
  return (
    <section aria-labelledby="next" class="part">
      <h2 id="next">{say('What comes next')}</h2>
      {isInOrder && (
        <p>
          {isPour(sump.recipe)
            ? say('Nothing to do now. Filled to its mark it would take:')
            : say('Nothing to do now.')}
        </p>
      )}
      {isInOrder && !isPour(sump.recipe) ? (
        <Link class="button" href={`/round/${encodeURIComponent(sump.sump)}`}>
          {say('Read it now')}
        </Link>
      ) : (
        <div class="next-line">
          <TodayLine
            item={sump}
            shop={shop}
            at={now}
            ordinal={null}
            wrote={({ entries }) =>
              setSaid(
                say('Written down: {entries}.', {
                  entries: entries.map((entry) => wordsOf(entry, readerOf(shop.units))).join(', '),
                }),
              )
            }
          />
        </div>
      )}
      <p role="status">{said}</p>
    </section>
  )
}
