import { BookError, type ErrorCode, type Fault } from '@sumpbook/book'
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify'

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
}

const titleOf: Record<ErrorCode, string> = {
  'refused-input': 'The input has faults; nothing was changed',
  'other-entry-under-id': 'Another entry stands under this id',
  'not-found': 'Not found',
  'store-out-of-reach': 'The book cannot be reached',
  'newer-store': 'The book was written by a newer version',
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
  if (error instanceof BookError) return sendProblem(reply, problemOf(error))
  const status = 'statusCode' in error && typeof error.statusCode === 'number' ? error.statusCode : 500
  if (status >= 500) {
    request.log.error(error)
    const detail = isDiskFull(error)
      ? 'The disk is full; nothing was changed.'
      : 'Something went wrong here; nothing was changed.'
    const full = isDiskFull(error)
    return sendProblem(reply, {
      type: full ? 'urn:sumpbook:disk-full' : 'about:blank',
      title: full ? 'The disk is full' : 'Error on the server',
      status: full ? 507 : 500,
      detail,
    })
  }
  return sendProblem(reply, { type: 'about:blank', title: 'The request cannot be read', status, detail: error.message })
}

const isDiskFull = (error: Error) => /database or disk is full|ENOSPC/.test(error.message)
