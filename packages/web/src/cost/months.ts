/** Months that can be picked, youngest first: `2026-10`. */
export function monthsUpTo(today: string, count = 36): string[] {
  const [year, month] = today.split('-').map(Number) as [number, number]
  return Array.from({ length: count }, (_, n) => new Date(Date.UTC(year, month - 1 - n, 1)).toISOString().slice(0, 7))
}

/** The first and the last day of a month. */
export function daysOf(month: string): { from: string; to: string } {
  const [year, number] = month.split('-').map(Number) as [number, number]
  return { from: `${month}-01`, to: new Date(Date.UTC(year, number, 0)).toISOString().slice(0, 10) }
}
