import { BookError } from '../../errors.ts'

/** BEGIN IMMEDIATE is the one place where another writer is met. */
export const isBusy = (error: unknown): boolean => error instanceof Error && /database is locked/.test(error.message)

/** What SQLite says, as the book says it where a person can act on it; else as it came. */
export function readable(error: unknown): unknown {
  if (error instanceof Error && /database or disk is full|ENOSPC/.test(error.message)) {
    return new BookError('disk-full', 'The disk is full; nothing was changed. Make room, then try again.')
  }
  return error
}
