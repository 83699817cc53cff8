import { BookError } from '@sumpbook/book'
import type { FastifyReply } from 'fastify'
import { TooManyTries, wrongCredentials } from './refusals.ts'

/**
 * Hands the cookies of one of the library's answers on.
 *
 * @returns what it answered
 * @throws {BookError} `wrong-credentials`, `too-many-tries` where it refused
 */
export async function passOn<T>(reply: FastifyReply, answer: Response): Promise<T> {
  const body: unknown = await answer.json().catch(() => null)
  if (!answer.ok) throw refusalOf(answer, body)
  for (const cookie of answer.headers.getSetCookie()) reply.header('set-cookie', cookie)
  return body as T
}

function refusalOf({ status }: Response, body: unknown): Error {
  const { code = '' } = (body ?? {}) as { code?: string }
  if (status === 429 || /LOCKED|TOO_MANY/.test(code)) return new TooManyTries(15 * 60)
  if (/INVALID_CODE|BACKUP_CODE/.test(code)) {
    return new BookError('wrong-credentials', 'This code is not right; one-time codes change every 30 seconds.')
  }
  if (status === 401 || status === 400) return wrongCredentials()
  return new Error(`the authentication library answered ${status} ${code}`)
}
