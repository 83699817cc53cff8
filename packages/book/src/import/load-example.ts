import { say } from '@sumpbook/fluid'
import { refusal } from '../errors.ts'
import type { Store } from '../store/store.ts'
import { importBookFile } from './import-book.ts'
import type { ImportReport } from './sheet-types.ts'

const exampleMark = 'example-shop'

/**
 * The example shop into an empty book; the book then says that it is one.
 *
 * @param bookFile the example as a book file whose last entries lie just before the instant given
 * @throws {BookError} `refused-input` where the book holds anything already
 */
export async function loadExample(store: Store, bookFile: (until: string) => string, now: Date): Promise<ImportReport> {
  const [head, things] = await Promise.all([store.head(), store.countThings()])
  if (head.seq > 0 || things > 0) {
    throw refusal(
      [{ pointer: '', found: say('a book with entries'), expected: say('an empty book for the example shop') }],
      'example shop',
    )
  }
  const report = await importBookFile(store, bookFile(now.toISOString()), now)
  await store.write((journal) => journal.setMeta(exampleMark, now.toISOString()))
  return report
}

/** Whether this book is the example shop. */
export const isExample = async (store: Store): Promise<boolean> => (await store.meta(exampleMark)) !== null
