import { say } from '../words/index.ts'
import { sayList } from './phrases.ts'

/** What one shift leaves to the next, a few words each. */
export interface HandoverParts {
  /** "Mill 3: Added 38 L at 18 %" */
  done: readonly string[]
  /** Names of sumps that were read. */
  read: readonly string[]
  /** "Mill 5: Add 12 L at 8 %" */
  open: readonly string[]
  /** With reason and end. */
  putOff: readonly string[]
  /** Slides and samples whose result is to be read. */
  results: readonly string[]
}

/** So many lines of one part are written out; of more it is said how many. */
const mostLines = 8

/** The note as it is proposed: what there is of each part in a paragraph; whoever writes it changes it as they like. */
export function sayHandoverNote({ done, read, open, putOff, results }: HandoverParts): string {
  const parts = [
    done.length === 0 ? '' : say('Done: {lines}.', { lines: listed(done) }),
    read.length === 0 ? '' : say('Read: {count, plural, one {# sump} other {# sumps}}.', { count: read.length }),
    open.length === 0 ? say('Nothing is open.') : say('Still open: {lines}.', { lines: listed(open) }),
    putOff.length === 0 ? '' : say('Put off: {lines}.', { lines: listed(putOff) }),
    results.length === 0 ? '' : say('To be read: {lines}.', { lines: listed(results) }),
  ]
  return parts.filter((part) => part !== '').join('\n')
}

function listed(lines: readonly string[]): string {
  if (lines.length <= mostLines + 1) return lines.join('; ')
  return say('{lines}; and {more} more', {
    lines: lines.slice(0, mostLines).join('; '),
    more: lines.length - mostLines,
  })
}

/** "Read by Ana and Ben." Nothing where nobody has. */
export const sayReadBy = (names: readonly string[]) =>
  names.length === 0 ? '' : say('Read by {names}.', { names: sayList(names) })
