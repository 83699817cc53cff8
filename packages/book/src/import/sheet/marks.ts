import type { RowMark } from './read-row.ts'

const words: Record<Exclude<RowMark, 'waiting'>, string> = {
  'short-year': 'years of two digits, taken as 1970 to 2069',
  twice: 'times that the clock showed twice that day, taken as the first',
  never: 'times that the clock skipped that day, taken as the hour after',
  'no-amount': 'a strength poured without an amount: no addition was made of it',
  'above-brim': 'a level a little above the brim, accepted',
  'water-unnamed': 'a water named where the book has none: it is kept as typed only',
  'note-alone': 'a note about no machine: it is left out',
}

/** What was counted over the rows, a sentence each. */
export function sayMarks(marks: ReadonlyMap<RowMark, { count: number; row: number }>): string[] {
  return (Object.keys(words) as (keyof typeof words)[]).flatMap((mark) => {
    const counted = marks.get(mark)
    if (counted === undefined) return []
    const more = counted.count > 1 ? ` (${counted.count} in all)` : ''
    return [`Row ${counted.row}: ${words[mark]}${more}.`]
  })
}
