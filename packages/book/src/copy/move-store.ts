import { createHash } from 'node:crypto'
import { BookError } from '../errors.ts'
import { exportBook } from '../export/export-book.ts'
import { sayStoreFault } from '../integrity/fault-list.ts'
import { type StoreReport, verifyJournal } from '../integrity/verify-store.ts'
import type { JournalReader, Store } from '../store/store.ts'
import { contentOf, fill } from './content.ts'

/**
 * Copies a book into another, empty store: the chain with its places, hashes and instants of arrival is the same there, and so
 * is an export, byte for byte. Both are checked before anything is committed; the book that was moved stays as it is.
 *
 * @throws {BookError} `store-not-empty`, `damaged-store`; nothing was written then
 */
export async function moveStore(from: Store, to: Store): Promise<StoreReport> {
  return from.snapshot(async (source) => {
    const content = await contentOf(source)
    const exported = await exportDigest(source)
    return to.write(async (target) => {
      await fill(target, content)
      const report = await verifyJournal(target)
      if (!report.sound) {
        throw new BookError(
          'damaged-store',
          `The book is not sound: ${sayStoreFault(report.faults[0]!)}. Nothing was moved.`,
        )
      }
      if ((await exportDigest(target)) !== exported) {
        throw new BookError('damaged-store', 'The book would not be the same after the move; nothing was moved.')
      }
      return report
    })
  })
}

/** SHA-256 of a book's export. */
export async function exportDigest(journal: JournalReader): Promise<string> {
  const hash = createHash('sha256')
  for await (const piece of exportBook(journal)) hash.update(piece)
  return hash.digest('hex')
}
