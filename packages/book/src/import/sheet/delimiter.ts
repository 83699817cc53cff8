/** What may separate the cells of a CSV; the earlier wins where two separate equally well. */
export const delimiters = ['\t', ';', ','] as const

/**
 * The sign that separates the cells: the one that most of the first lines hold equally often, quoted text left out.
 * Decimal commas lose against semicolons, since the line of headings has none of them.
 *
 * @example delimiterOf('Datum;M1\n05.10.2026;3,4') // ';'
 */
export function delimiterOf(head: string): string {
  const lines = head
    .replace(/"(?:[^"]|"")*"/g, '')
    .split(/\r\n|\n|\r/)
    .filter((line) => line.trim() !== '')
    .slice(0, 100)
  const scored = delimiters.map((delimiter) => ({ delimiter, ...agreement(lines, delimiter) }))
  return scored.reduce((best, one) => (one.lines > best.lines ? one : best), { delimiter: ',', lines: 0 }).delimiter
}

/** How many of the lines hold the delimiter as often as most of those that hold it at all. */
function agreement(lines: readonly string[], delimiter: string): { lines: number } {
  const times = new Map<number, number>()
  for (const line of lines) {
    const count = line.split(delimiter).length - 1
    if (count > 0) times.set(count, (times.get(count) ?? 0) + 1)
  }
  return { lines: Math.max(0, ...times.values()) }
}
