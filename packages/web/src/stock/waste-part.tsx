import type { Book } from '../api/types.ts'

/** What leaves the sumps and is no coolant any more. */
export function WastePart({ book }: { book: Book }) {
  return (
    <p class="intro">
      Used fluid, skimmed oil, sludge and rinse water of {book.shop.name} wait here for their carrier.
    </p>
  )
}
