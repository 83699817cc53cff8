import { type Book, openBook, openStore } from '@sumpbook/book'
import type { Settings } from './settings.ts'

/** Opens the book, does the work, and closes it again whatever happens. */
export async function withBook<T>({ place, folder }: Settings, work: (book: Book) => Promise<T>): Promise<T> {
  const book = openBook(await openStore(place, { copies: folder }), () => new Date())
  try {
    return await work(book)
  } finally {
    await book.close()
  }
}
