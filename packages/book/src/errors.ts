import { message, say } from '@sumpbook/fluid'

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
  const told = { what: say(refusedWords[what] ?? what), fault: first === undefined ? '' : sayFault(first) }
  const words =
    first === undefined
      ? say('The {what} was refused.', told)
      : faults.length === 1
        ? say('The {what} was refused: {fault}', told)
        : say('The {what} was refused: {fault} (and {more} more)', { ...told, more: String(faults.length - 1) })
  return new BookError('refused-input', words, faults)
}

/** What can be refused; what is not among them has a name of its own. */
const refusedWords: Readonly<Record<string, string>> = {
  input: message('input'),
  entry: message('entry'),
  sheet: message('sheet'),
  file: message('file'),
  'book file': message('book file'),
  map: message('map'),
  request: message('request'),
  attachment: message('attachment'),
  plan: message('plan'),
  question: message('question'),
  account: message('account'),
  'example shop': message('example shop'),
}

/** "row 4, column pH: found 19, expected at most 14" */
export function sayFault({ pointer, row, column, found, expected }: Fault): string {
  return say('{place}: found {found}, expected {expected}', {
    place: placeOf({ pointer, row, column }),
    found,
    expected,
  })
}

function placeOf({ pointer, row, column }: { pointer: string; row: number | undefined; column: string | undefined }) {
  if (row === undefined) return pointer || say('the document')
  return column === undefined
    ? say('row {row}', { row: String(row) })
    : say('row {row}, column {column}', { row: String(row), column })
}
