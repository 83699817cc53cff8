import { BookError, type ErrorCode, sayFault } from '@sumpbook/book'
import { problemOf } from '@sumpbook/server/problems'
import { exits, UsageError, type World } from './command.ts'

const exitOf: Record<ErrorCode, number> = {
  'refused-input': exits.refused,
  'other-entry-under-id': exits.refused,
  'not-found': exits.refused,
  'store-out-of-reach': exits.outOfReach,
  'newer-store': exits.outOfReach,
  'disk-full': exits.outOfReach,
  'store-in-use': exits.outOfReach,
  'store-not-empty': exits.refused,
  'damaged-store': exits.failed,
  'damaged-backup': exits.refused,
  'sign-in-needed': exits.refused,
  'not-allowed': exits.refused,
  'wrong-credentials': exits.refused,
  'too-many-tries': exits.refused,
}

/** Says what went wrong on stderr; stdout stays empty. With `--json` it is the problem document. */
export function reportError(error: unknown, { json, world }: { json: boolean; world: World }): number {
  const { stderr } = world
  if (error instanceof UsageError || isParseError(error)) {
    stderr.write(`${(error as Error).message}\n`)
    return exits.usage
  }
  if (error instanceof BookError) {
    if (json) stderr.write(`${JSON.stringify(problemOf(error), null, 2)}\n`)
    else
      stderr.write(
        `${error.message}\n${error.faults.length > 1 ? error.faults.map((fault) => `  ${sayFault(fault)}\n`).join('') : ''}`,
      )
    return exitOf[error.code]
  }
  const message = error instanceof Error ? error.message : String(error)
  stderr.write(json ? `${JSON.stringify({ type: 'about:blank', title: 'Failed', detail: message })}\n` : `${message}\n`)
  return exits.failed
}

const isParseError = (error: unknown) =>
  error instanceof TypeError && String((error as { code?: unknown }).code).startsWith('ERR_PARSE_ARGS')
