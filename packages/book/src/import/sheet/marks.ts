import { message, say } from '@sumpbook/fluid'
import type { RowMark } from './read-row.ts'

const words: Record<Exclude<RowMark, 'waiting'>, string> = {
  'short-year': message('years of two digits, taken as 1970 to 2069'),
  twice: message('times that the clock showed twice that day, taken as the first'),
  never: message('times that the clock skipped that day, taken as the hour after'),
  'no-amount': message('a strength poured without an amount: no addition was made of it'),
  'above-brim': message('a level a little above the brim, accepted'),
  'water-unnamed': message('a water named where the book has none: it is kept as typed only'),
  'note-alone': message('a note about no machine: it is left out'),
}

/** What was counted over the rows, a sentence each. */
export function sayMarks(marks: ReadonlyMap<RowMark, { count: number; row: number }>): string[] {
  return (Object.keys(words) as (keyof typeof words)[]).flatMap((mark) => {
    const counted = marks.get(mark)
    if (counted === undefined) return []
    const told = { row: String(counted.row), what: say(words[mark]), count: String(counted.count) }
    return [counted.count > 1 ? say('Row {row}: {what} ({count} in all).', told) : say('Row {row}: {what}.', told)]
  })
}
