import { Link, useLocation } from 'wouter-preact'
import { loadExample } from '../api/client.ts'
import type { Book } from '../api/types.ts'
import { useSaving } from '../shop/shop.tsx'
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
      <h1>A new book</h1>
      <p class="lede">
        Sumpbook keeps the coolant of a machine shop: type what the refractometer shows and read what to pour, into
        which sump, out of which water. It does the arithmetic, remembers every entry, and doubts with you.
      </p>
      {!book.empty && (
        <p class="note">
          This book is no longer empty. <Link href="/">Go to Today</Link>
        </p>
      )}
      <ul class="ways-in">
        <li>
          <h2>
            <Link href="/begin/shop">Begin with my shop</Link>
          </h2>
          <p>
            The shop, one fluid with the factor from its sheet, one water, the first sump. Two minutes, then straight to
            the first reading.
          </p>
        </li>
        <li>
          <h2>
            <Link href="/begin/sheet">Bring a spreadsheet</Link>
          </h2>
          <p>
            The readings you already have, CSV or XLSX: one reading a row, or a column a machine. You see how every row
            is understood before anything is written.
          </p>
        </li>
        <li>
          <h2>
            <button type="button" class="plain" disabled={saving.isBusy || !book.empty} onClick={() => void look()}>
              Look round the example shop
            </button>
          </h2>
          <p>
            {saving.isBusy
              ? 'Writing a year of an invented shop …'
              : 'An invented shop with a dozen machines and a year of entries, ordinary gaps included.'}
          </p>
        </li>
      </ul>
      {saving.rest.map((sentence) => (
        <p class="fault" role="alert">
          {sentence}
        </p>
      ))}
      <p class="foot">
        Everything stays on this server. Guidance only: the fluid’s label and safety data sheet, the supplier and local
        rules come first.
      </p>
    </div>
  )
}
