import { say } from '@sumpbook/fluid'
import { Link, useLocation } from 'wouter-preact'
import { loadExample } from '../api/client.ts'
import type { Book } from '../api/types.ts'
import { useSaving } from '../shop/use-saving.ts'
import './begin.css'

/** The first page of an empty book: three ways in. */
export function Begin({ book }: { book: Book }) {
  const [, go] = useLocation()
  const saving = useSaving()
  const look = async () => {
    if (await saving.put(loadExample)) go('/')
  }
  return (
    <div class="begin">
      <h1>{say('A new book')}</h1>
      <p class="lede">
        {say(
          'Sumpbook keeps the coolant of a machine shop: type what the refractometer shows and read what to pour, into which sump, out of which water. It does the arithmetic, remembers every entry, and doubts with you.',
        )}
      </p>
      {!book.empty && (
        <p class="note">
          {say('This book is no longer empty.')} <Link href="/">{say('Go to Today')}</Link>
        </p>
      )}
      <ul class="ways-in">
        <li>
          <h2>
            <Link href="/begin/shop">{say('Begin with my shop')}</Link>
          </h2>
          <p>
            {say(
              'The shop, one fluid with factor and band from its sheet, the first sump. Two minutes, then straight to the first reading.',
            )}
          </p>
        </li>
        <li>
          <h2>
            <Link href="/begin/sheet">{say('Bring a spreadsheet')}</Link>
          </h2>
          <p>
            {say(
              'The readings you already have, CSV or XLSX: one reading a row, or a column a machine. You see how every row is understood before anything is written.',
            )}
          </p>
        </li>
        <li>
          <h2>
            <button type="button" class="plain" disabled={saving.isBusy || !book.empty} onClick={() => void look()}>
              {say('Look round the example shop')}
            </button>
          </h2>
          <p>
            {saving.isBusy
              ? say('Writing a year of an invented shop …')
              : say('An invented shop with a dozen machines and a year of entries, ordinary gaps included.')}
          </p>
        </li>
      </ul>
      {saving.rest.map((sentence) => (
        <p class="fault" role="alert">
          {sentence}
        </p>
      ))}
      <p class="foot">
        {say(
          'Everything stays on this server. Guidance only: the fluid’s label and safety data sheet, the supplier and local rules come first.',
        )}
      </p>
    </div>
  )
}
