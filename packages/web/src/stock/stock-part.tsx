import { sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Book } from '../api/types.ts'
import { useWriting } from '../entry/use-writing.ts'
import { Cautions } from '../parts/cautions.tsx'
import { WideTable } from '../parts/wide-table.tsx'
import { readerOf, sayMoney } from '../say/units.ts'
import { sayWhen } from '../say/when.ts'
import '../today/line.css'
import { type FluidStock, useStock } from './answers.ts'
import { sayDayText, sayMovement, saySettings, sayUsedBy } from './say-stock.ts'
import { type StockAct, StockForm } from './stock-forms.tsx'

/** Every fluid's stock: a sentence first, its lots, and the forms that keep them right. */
export function StockPart({ book }: { book: Book }) {
  const answer = useStock()
  if (answer.data === undefined) {
    return answer.error === null ? <p class="quiet">One moment …</p> : <p class="fault">{answer.error.message}</p>
  }
  const { fluids, today } = answer.data
  const kept = fluids.filter(({ isKept }) => isKept)
  const others = fluids.filter(({ isKept }) => !isKept)
  return (
    <>
      {fluids.length === 0 && (
        <p>
          The book knows no fluid yet. <Link href="/shop">Add one under Shop</Link>
        </p>
      )}
      {kept.map((stock) => (
        <OneFluid key={stock.fluid} stock={stock} book={book} today={today} />
      ))}
      {others.length > 0 && (
        <section class="part" aria-labelledby="not-kept">
          <h2 id="not-kept">{kept.length === 0 ? 'Begin with a count' : 'Not kept here'}</h2>
          <p class="intro">
            Count the drums that stand there, or write the next delivery: from then on the book says how long they last
            and when to order.
          </p>
          {others.map((stock) => (
            <OneFluid key={stock.fluid} stock={stock} book={book} today={today} />
          ))}
        </section>
      )}
    </>
  )
}

const acts: readonly (readonly [StockAct, string])[] = [
  ['receive', 'Received'],
  ['issue', 'Issued'],
  ['count', 'Counted'],
  ['order', 'Ordered'],
  ['settings', 'Settings'],
]

function OneFluid({ stock, book, today }: { stock: FluidStock; book: Book; today: string }) {
  const [act, setAct] = useState<StockAct | null>(null)
  const writing = useWriting()
  const { units } = book.shop
  return (
    <section class="stock-fluid" id={`fluid-${stock.fluid}`} aria-label={stock.name}>
      <h2>{stock.name}</h2>
      <p class="stock-sentence">{stock.sentence.slice(stock.name.length + 2)}</p>
      {stock.doubts.length > 0 && (
        <ul class="stock-doubts" aria-label="What does not agree">
          {stock.doubts.map((doubt) => (
            <li>{doubt}</li>
          ))}
        </ul>
      )}
      <Cautions cautions={stock.cautions} />
      {stock.lots.length > 0 && <Lots stock={stock} today={today} units={units} />}
      {stock.onOrder.map(({ entry, litres, orderedOn, expectedOn, late }) => (
        <p key={entry}>
          {late && <span class="tag do">late</span>} {sayVolume(litres, readerOf(units))} ordered{' '}
          {sayDayText(orderedOn)}, expected {sayDayText(expectedOn)}. <Link href={`/journal/${entry}`}>Its entry</Link>
        </p>
      ))}
      {act === null ? (
        <div class="buttons">
          {acts
            .filter(([one]) => stock.isKept || one === 'receive' || one === 'count' || one === 'settings')
            .map(([one, words]) => (
              <button
                type="button"
                class={one === 'settings' ? 'plain' : ''}
                aria-label={`${words}: ${stock.name}`}
                onClick={() => {
                  setAct(one)
                  writing.hush()
                }}
              >
                {words}
              </button>
            ))}
        </div>
      ) : (
        <StockForm
          key={act}
          act={act}
          stock={stock}
          fluid={book.fluids.find(({ id }) => id === stock.fluid)}
          units={units}
          today={today}
          isBusy={writing.isBusy}
          write={async (entries) => {
            const items = entries.map((entry) => ({ entry, label: `${stock.name}: ${entry.kind}` }))
            if (await writing.write(items)) setAct(null)
          }}
          cancel={() => setAct(null)}
        />
      )}
      <p role="status">{writing.said}</p>
      {stock.isKept && <Behind stock={stock} book={book} />}
    </section>
  )
}

function Lots({ stock, today, units }: { stock: FluidStock; today: string; units: Book['shop']['units'] }) {
  return (
    <WideTable of="Lots">
      <table class="lots">
        <caption>Lots, soonest too old first</caption>
        <thead>
          <tr>
            <th>Lot</th>
            <th class="figure">Left</th>
            <th>Too old from</th>
            <th>Came</th>
          </tr>
        </thead>
        <tbody>
          {stock.lots.map(({ lot, litres, receivedOn, madeOn, expiresOn, agedFrom, seal }) => (
            <tr key={lot ?? ''}>
              <td>
                {lot ?? 'not known'}
                {seal === 'broken' && <span class="tag doubt">seal broken</span>}
              </td>
              <td class="figure">{sayVolume(litres, readerOf(units))}</td>
              <td>
                {expiresOn === null ? 'not known' : sayDayText(expiresOn)}
                {expiresOn !== null && expiresOn <= today && <span class="tag doubt">too old</span>}
                {agedFrom === 'arrival' && <span class="quiet"> at the latest</span>}
              </td>
              <td>
                {sayDayText(receivedOn)}
                {madeOn !== null && <span class="quiet">, made {sayDayText(madeOn)}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  )
}

/** Movements that are listed at once. */
const shownLines = 20

/** What stands behind the sentence: how it goes, what it was reckoned with, and what was written. */
function Behind({ stock, book }: { stock: FluidStock; book: Book }) {
  const { units, currency, timeZone } = book.shop
  const now = new Date().toISOString()
  // Where drums count when they are issued, pours move no stock.
  const movements = stock.movements.filter(({ kind }) => stock.usedBy === 'pours' || kind !== 'pour')
  return (
    <details>
      <summary>What stands behind it</summary>
      <ul class="says">
        {stock.says.map((sentence) => (
          <li>{sentence}</li>
        ))}
        <li>{sayUsedBy(stock)}</li>
      </ul>
      <dl class="pairs">
        {saySettings(stock, { units, money: (amount) => sayMoney(amount, currency) }).map(
          ({ name, value, assumed }) => (
            <>
              <dt>{name}</dt>
              <dd>
                {value}
                {assumed && <span class="tag plain">assumed</span>}
              </dd>
            </>
          ),
        )}
      </dl>
      {stock.counts.length > 0 && (
        <>
          <h3>Counts</h3>
          <ul class="says">
            {stock.counts.toReversed().map(({ on, lot, says }) => (
              <li>
                {sayDayText(on)}
                {lot === null ? '' : `, lot ${lot}`}: {says}
              </li>
            ))}
          </ul>
        </>
      )}
      <h3>The last ninety days</h3>
      {movements.length === 0 && <p class="quiet">Nothing was written.</p>}
      <ul class="says">
        {movements.slice(0, shownLines).map((movement) => (
          <li key={movement.entry}>
            <Link href={`/journal/${movement.entry}`}>{sayWhen(movement.at, { timeZone, now })}</Link>:{' '}
            {sayMovement(movement, units)}
          </li>
        ))}
      </ul>
      {movements.length > shownLines && <p class="quiet">And {movements.length - shownLines} more, in the journal.</p>}
    </details>
  )
}
