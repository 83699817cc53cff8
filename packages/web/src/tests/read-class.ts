import { say } from '@sumpbook/fluid'
import { type FieldRead, readPlain } from '../fields/read.ts'

/** A figure, or a class as strips and slides give it. */
export type Read = number | { low: number; high: number } | { below: number } | { atLeast: number }

export type ClassRead = { value: Read | null } | Extract<FieldRead, { fault: unknown }>

/** Words beside the signs are those of every language, whichever is read: nobody types one and means another. */
const between = /^(\S+)\s*(?:–|-|to|bis|a)\s*(\S+)$/i

/**
 * What a strip shows as it is typed: "9.2", "<10" or "under 10", "10-25" or "10 to 25", ">80" or "80+". Empty text is nothing read.
 *
 * @param ends that every figure in it must lie between
 */
export function readClass(text: string, ends: { min: number; max: number }): ClassRead {
  const typed = text.trim()
  if (typed === '') return { value: null }
  const under = /^(?:<|under |below |unter |menos de )\s*(.+)$/i.exec(typed)
  if (under !== null) return one(under[1]!, ends, (below) => ({ below }))
  const over =
    /^(?:>|over |at least |über |mindestens |ab |más de |al menos )\s*(.+)$/i.exec(typed) ?? /^(.+?)\s*\+$/.exec(typed)
  if (over !== null) return one(over[1]!, ends, (atLeast) => ({ atLeast }))
  const range = between.exec(typed)
  if (range === null) return one(typed, ends, (value) => value)
  const [low, high] = [readPlain(range[1]!, ends), readPlain(range[2]!, ends)]
  if ('fault' in low) return low
  if ('fault' in high) return high
  if (low.value === null || high.value === null || low.value >= high.value) {
    return { fault: { found: typed, expected: say('two figures, the lower one first, such as 10-25') } }
  }
  return { value: { low: low.value, high: high.value } }
}

function one(text: string, ends: { min: number; max: number }, made: (value: number) => Read): ClassRead {
  const read = readPlain(text, ends)
  if ('fault' in read) return read
  return { value: read.value === null ? null : made(read.value) }
}
