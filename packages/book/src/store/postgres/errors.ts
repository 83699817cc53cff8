import { BookError } from '../../errors.ts'

/** SQLSTATEs after which the same transaction may pass: serialization failure and deadlock. */
const passing = new Set(['40001', '40P01'])

export const isConflict = (error: unknown): boolean => passing.has(codeOf(error))

/** Classes of SQLSTATE that say the server is not to be had, beside the socket's own errors. */
const gone = /^(08|57P0[1-5]|53[03]|3D000|28)/
const socketErrors = new Set([
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOTFOUND',
  'ETIMEDOUT',
  'EPIPE',
  'EHOSTUNREACH',
  'EAI_AGAIN',
])
const lostConnection = /Connection terminated|timeout exceeded when trying to connect|not queryable/

/** What the server or its connection says, as the book says it where a person can act on it; else as it came. */
export function readable(error: unknown): unknown {
  const code = codeOf(error)
  if (code === '53100') {
    return new BookError(
      'disk-full',
      'The database server’s disk is full; nothing was changed. Make room, then try again.',
    )
  }
  const message = error instanceof Error ? error.message : String(error)
  if (gone.test(code) || socketErrors.has(code) || lostConnection.test(message)) {
    return new BookError('store-out-of-reach', `The database server cannot be reached: ${message || code}`)
  }
  return error
}

function codeOf(error: unknown): string {
  const { code } = (error ?? {}) as { code?: unknown }
  return typeof code === 'string' ? code : ''
}
