import { message, say, sayNumber, sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Book } from '../api/types.ts'
import { useWriting } from '../entry/use-writing.ts'
import { Cautions } from '../parts/cautions.tsx'
import { WideTable } from '../parts/wide-table.tsx'
import { Said } from '../say/said.tsx'
import { readerOf, sayMoney } from '../say/units.ts'
import { sayWhen } from '../say/when.ts'
import '../today/line.css'
import { type FluidStock, useStock } from './answers.ts'
import { sayDayText, sayMovement, saySettings, sayUsedBy, withoutName } from './say-stock.ts'
import { sayWritten } from './say-written.ts'
import { type StockAct, StockForm } from './stock-forms.tsx'

/** Every fluid's stock: a sentence first, its lots, and the forms that keep them right. */
export function StockPart({ book }: { book: Book }) {
  const answer = useStock()
  if (answer.data === undefined) {
    return answer.error === null ? (
      <p class="quiet">{say('One moment …')}</p>
    ) : (
      <p class="fault">{answer.error.message}</p>
    )
  }
  const { fluids, today } = answer.data
  const kept = fluids.filter(({ isKept }) => isKept)
  const others = fluids.filter(({ isKept }) => !isKept)
  return (
    <>
      {fluids.length === 0 && (
        <p>
          <Said
            text="The book knows no fluid yet. <add>Add one under Shop</add>"
            parts={{ add: (inside) => <Link href="/shop">{inside}</Link> }}
          />
        </p>
      )}
      {kept.map((stock) => (
        <OneFluid key={stock.fluid} stock={stock} book={book} today={today} />
      ))}
      {others.length > 0 && (
        <section class="part" aria-labelledby="not-kept">
          <h2 id="not-kept">{kept.length === 0 ? say('Begin with a count') : say('Not kept here')}</h2>
          <p class="intro">
            {say(
              'Count the drums that stand there, or write the next delivery: from then on the book says how long they last and when to order.',
            )}
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
  ['receive', message('Received')],
  ['issue', message('Issued')],
  ['count', message('Counted')],
  ['order', message('Ordered')],
  ['settings', message('Settings')],
]

function OneFluid({ stock, book, today }: { stock: FluidStock; book: Book; today: string }) {
  const [act, setAct] = useState<StockAct | null>(null)
  const writing = useWriting()
  const { units } = book.shop
  return (
    <section class="stock-fluid" id={`fluid-${stock.fluid}`} aria-label={stock.name}>
      <h2>{stock.name}</h2>
      <p class="stock-sentence">{withoutName(stock.sentence, stock.name)}</p>
      {stock.doubts.length > 0 && (
        <ul class="stock-doubts" aria-label={say('What does not agree')}>
          {stock.doubts.map((doubt) => (
            <li>{doubt}</li>
          ))}
        </ul>
      )}
      <Cautions cautions={stock.cautions} />
      {stock.lots.length > 0 && <Lots stock={stock} today={today} units={units} />}
      {stock.onOrder.map(({ entry, litres, orderedOn, expectedOn, late }) => (
        <p key={entry}>
          {late && <span class="tag do">{say('late')}</span>}{' '}
          {say('{volume} ordered {ordered}, expected {expected}.', {
            volume: sayVolume(litres, readerOf(units)),
            ordered: sayDayText(orderedOn),
            expected: sayDayText(expectedOn),
          })}{' '}
          <Link href={`/journal/${entry}`}>{say('Its entry')}</Link>
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
                aria-label={`${say(words)}: ${stock.name}`}
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
        <StockForm
          key={act}
          act={act}
          stock={stock}
          fluid={book.fluids.find(({ id }) => id === stock.fluid)}
          units={units}
          today={today}
          isBusy={writing.isBusy}
          write={async (entries) => {
            const items = entries.map((entry) => ({ entry, label: sayWritten(entry, stock.name) }))
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
    <WideTable of={say('Lots of {fluid}', { fluid: stock.name })}>
      <table class="lots">
        <caption>{say('Lots, soonest too old first')}</caption>
        <thead>
          <tr>
            <th>{say('Lot')}</th>
            <th class="figure">{say('Left')}</th>
            <th>{say('Too old from')}</th>
            <th>{say('Came')}</th>
          </tr>
        </thead>
        <tbody>
          {stock.lots.map(({ lot, litres, receivedOn, madeOn, expiresOn, agedFrom, seal }) => (
            <tr key={lot ?? ''}>
              <td>
                {lot ?? say('not known')}
                {seal === 'broken' && <span class="tag doubt">{say('seal broken')}</span>}
              </td>
              <td class="figure">{sayVolume(litres, readerOf(units))}</td>
              <td>
                {expiresOn === null ? say('not known') : sayDayText(expiresOn)}
                {expiresOn !== null && expiresOn <= today && <span class="tag doubt">{say('too old')}</span>}
                {agedFrom === 'arrival' && <span class="quiet"> {say('at the latest')}</span>}
              </td>
              <td>
                {sayDayText(receivedOn)}
                {madeOn !== null && <span class="quiet">, {say('made {day}', { day: sayDayText(madeOn) })}</span>}
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
      <summary>{say('What stands behind it')}</summary>
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
                {assumed && <span class="tag plain">{say('assumed')}</span>}
              </dd>
            </>
          ),
        )}
      </dl>
      {stock.counts.length > 0 && (
        <>
          <h3>{say('Counts')}</h3>
          <ul class="says">
            {stock.counts.toReversed().map(({ on, lot, says }) => (
              <li>
                {sayDayText(on)}
                {lot === null ? '' : `, ${say('lot {lot}', { lot })}`}: {says}
              </li>
            ))}
          </ul>
        </>
      )}
      <h3>{say('The last ninety days')}</h3>
      {movements.length === 0 && <p class="quiet">{say('Nothing was written.')}</p>}
      <ul class="says">
        {movements.slice(0, shownLines).map((movement) => (
          <li key={movement.entry}>
            <Link href={`/journal/${movement.entry}`}>{sayWhen(movement.at, { timeZone, now })}</Link>:{' '}
            {sayMovement(movement, units)}
          </li>
        ))}
      </ul>
      {movements.length > shownLines && (
        <p class="quiet">
          {say('And {count} more, in the journal.', { count: sayNumber(movements.length - shownLines, 0) })}
        </p>
      )}
    </details>
  )
}
