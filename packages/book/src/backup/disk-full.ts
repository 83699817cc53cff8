import { BookError } from '../errors.ts'

/** A system's "no room" as the book says it; anything else as it came. */
export function readableWrite(error: unknown, what: string): unknown {
  const full = (error as { code?: unknown } | null)?.code === 'ENOSPC'
  return full ? new BookError('disk-full', `There is no room on the disk for ${what}; nothing was changed.`) : error
}
