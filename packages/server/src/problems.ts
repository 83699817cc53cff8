import { BookError, type ErrorCode, type Fault } from '@sumpbook/book'
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify'
import { TooManyTries } from './people/refusals.ts'

/** Problem details, RFC 9457. */
export interface Problem {
  type: string
  title: string
  status: number
  detail: string
  errors?: readonly Fault[]
  /** The values are possible: they are taken once their pointers stand in the entry's `confirmed`. */
  confirmable?: boolean
}

const statusOf: Record<ErrorCode, number> = {
  'refused-input': 422,
  'other-entry-under-id': 409,
  'not-found': 404,
  'store-out-of-reach': 503,
  'newer-store': 503,
  'disk-full': 507,
  'store-in-use': 503,
  'store-not-empty': 409,
  'damaged-store': 500,
  'damaged-backup': 422,
  'sign-in-needed': 401,
  'not-allowed': 403,
  'wrong-credentials': 401,
  'too-many-tries': 429,
}

const titleOf: Record<ErrorCode, string> = {
  'refused-input': 'The input has faults; nothing was changed',
  'other-entry-under-id': 'Another entry stands under this id',
  'not-found': 'Not found',
  'store-out-of-reach': 'The book cannot be reached',
  'newer-store': 'The book was written by a newer version',
  'disk-full': 'The disk is full',
  'store-in-use': 'Somebody else has the book open',
  'store-not-empty': 'There is a book already',
  'damaged-store': 'The book is not as it was written',
  'damaged-backup': 'The backup is not whole',
  'sign-in-needed': 'Nobody is signed in',
  'not-allowed': 'This is not for you to do',
  'wrong-credentials': 'That is not right',
  'too-many-tries': 'Too many tries',
}

/** What the book refuses, as problem details. */
export function problemOf(error: BookError): Problem {
  const { code, message, faults } = error
  return {
    type: `urn:sumpbook:${code}`,
    title: titleOf[code],
    status: statusOf[code],
    detail: message,
    ...(faults.length > 0 ? { errors: faults } : {}),
  }
}

export function sendProblem(reply: FastifyReply, problem: Problem): FastifyReply {
  return reply.code(problem.status).type('application/problem+json').send(problem)
}

/** Every error leaves as problem details; one of ours that nobody expected is logged and says nothing of its inside. */
export function handleError(error: FastifyError | Error, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  if (error instanceof TooManyTries) reply.header('retry-after', error.retryAfterSeconds)
  if (error instanceof BookError) return sendProblem(reply, problemOf(error))
  const status = 'statusCode' in error && typeof error.statusCode === 'number' ? error.statusCode : 500
  if (status >= 500) {
    request.log.error(error)
    if (/ENOSPC/.test(error.message)) {
      return sendProblem(reply, problemOf(new BookError('disk-full', 'The disk is full; nothing was changed.')))
    }
    const detail = 'Something went wrong here; nothing was changed.'
    return sendProblem(reply, { type: 'about:blank', title: 'Error on the server', status: 500, detail })
  }
  return sendProblem(reply, { type: 'about:blank', title: 'The request cannot be read', status, detail: error.message })
}
