/** One thing wrong with what came in: where, what stood there, what belongs there. */
export interface Fault {
  /** JSON Pointer (RFC 6901) into what was given; a sheet's fault has `row` and `column` as well. */
  pointer: string
  /** What was found, short enough to read aloud. */
  found: string
  /** What was expected in its place. */
  expected: string
  /** Row of a sheet, 1 is its first line. */
  row?: number
  /** A sheet's column, by its heading. */
  column?: string
}

/** Why the book refuses; explained in `docs/errors.md`. A code is never used again for something else. */
export type ErrorCode =
  /** What came in has faults; each is listed. */
  | 'refused-input'
  /** Another entry stands under this id. */
  | 'other-entry-under-id'
  /** Nothing here has that name. */
  | 'not-found'
  /** The book's store cannot be opened, read or written. */
  | 'store-out-of-reach'
  /** The file was made by a newer version. */
  | 'newer-store'
  /** No room on the disk for what was to be written. */
  | 'disk-full'
  /** Somebody else has the book open who must not. */
  | 'store-in-use'
  /** There is a book already where one was to be put. */
  | 'store-not-empty'
  /** The book is not as it was written: it was changed by hand, or its disk lost something. */
  | 'damaged-store'
  /** The backup is not whole, or no backup. */
  | 'damaged-backup'
  /** Nobody is signed in, and here somebody must be. */
  | 'sign-in-needed'
  /** Who is signed in may not do this. */
  | 'not-allowed'
  /** A name, a password or a code that is not right. */
  | 'wrong-credentials'
  /** Somebody tries too often. */
  | 'too-many-tries'

/** A refusal a person can act on. Nothing was changed. */
export class BookError extends Error {
  readonly code: ErrorCode
  readonly faults: readonly Fault[]

  constructor(code: ErrorCode, message: string, faults: readonly Fault[] = []) {
    super(message)
    this.name = 'BookError'
    this.code = code
    this.faults = faults
  }
}

/** Refused input in one sentence for one fault, with a count for more. */
export function refusal(faults: readonly Fault[], what = 'input'): BookError {
  const [first] = faults
  const rest = faults.length > 1 ? ` (and ${faults.length - 1} more)` : ''
  const message =
    first === undefined ? `The ${what} was refused.` : `The ${what} was refused: ${sayFault(first)}${rest}`
  return new BookError('refused-input', message, faults)
}

/** "row 4, column pH: found 19, expected at most 14" */
export function sayFault({ pointer, row, column, found, expected }: Fault): string {
  const place =
    row === undefined ? pointer || 'the document' : `row ${row}${column === undefined ? '' : `, column ${column}`}`
  return `${place}: found ${found}, expected ${expected}`
}
