import { type Book, openBook, openSqliteStore } from '@sumpbook/book'
import type { Settings } from './settings.ts'

/** Opens the book, does the work, and closes it again whatever happens. */
export async function withBook<T>({ file }: Settings, work: (book: Book) => Promise<T>): Promise<T> {
  const book = openBook(await openSqliteStore(file), () => new Date())
  try {
    return await work(book)
  } finally {
    await book.close()
  }
}
