import { Link } from 'wouter-preact'
import type { Book } from '../api/types.ts'

/** The fluids of which the shop keeps concentrate. */
export function StockPart({ book }: { book: Book }) {
  return (
    <>
      {book.fluids.length === 0 && (
        <p>
          The book knows no fluid yet. <Link href="/shop">Add one under Shop</Link>
        </p>
      )}
      {book.fluids.map(({ id, name }) => (
        <section key={id} class="stock-fluid" aria-label={name}>
          <h2>{name}</h2>
        </section>
      ))}
    </>
  )
}
