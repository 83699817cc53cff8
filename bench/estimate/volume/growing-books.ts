import { calendarOf } from '../../../packages/book/src/estimate/calendar-of.ts'
import { shopEstimator } from '../../../packages/book/src/estimate/estimator.ts'
import { foldTo, freshFold } from '../../../packages/book/src/estimate/fold-shop.ts'
import { entryDays } from '../../../packages/book/src/estimate/journal-days.ts'
import { packTranslation } from '../../../packages/book/src/estimate/translation.ts'
import { setupsOf, thingsOf } from '../../../packages/book/src/import/book-document.ts'
import type { bookFile } from '../../../packages/book/src/index.ts'
import { thingHistory } from '../../../packages/book/src/setup/things.ts'
import { yearsOfEntries } from './years-of-entries.ts'

type BookFile = ReturnType<typeof bookFile.parse>

/** How much is kept of a hundred sumps after 1, 2, 5 and 10 years of records: bytes of a checkpoint. */
export async function growingBooks() {
  const rows = []
  for (const years of [1, 2, 5, 10]) {
    const book = yearsOfEntries({ sumps: 100, years, looksAYear: 65 })
    const file = book as unknown as BookFile
    const history = thingHistory(thingsOf(file), setupsOf(file))
    const { clock, calendar } = calendarOf(history)
    const context = { estimator: shopEstimator, calendar, source: entryDays(file.entries ?? [], { history, clock }) }
    const fold = freshFold(context)
    await foldTo(fold, Math.floor(clock.at(Date.parse(book.entries.at(-1)!.at))) + 1, context)
    const packed = shopEstimator.pack(fold.shop) as { sumps: [string, { doubts: unknown[]; branches: unknown[] }][] }
    rows.push({
      years,
      entries: book.entries.length,
      shopBytes: JSON.stringify(packed).length,
      memoryBytes: JSON.stringify(packTranslation(fold.memory)).length,
      branches: packed.sumps.reduce((sum, [, { branches }]) => sum + branches.length, 0),
      doubts: packed.sumps.reduce((sum, [, { doubts }]) => sum + doubts.length, 0),
    })
  }
  const [first, last] = [rows[0]!, rows.at(-1)!]
  const grown = Number(((last.shopBytes + last.memoryBytes) / (first.shopBytes + first.memoryBytes)).toPrecision(3))
  return {
    sumps: 100,
    rows,
    limit: { what: 'ten years over one, times the bytes', atMost: 1.2, found: grown, met: grown <= 1.2 },
  }
}
