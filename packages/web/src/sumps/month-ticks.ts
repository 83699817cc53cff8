/** Firsts of months, or every so many of them where there is no room for each. */
export function monthTicks(from: number, to: number, most: number): number[] {
  const first = new Date(from)
  const months: number[] = []
  for (
    let month = new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1, 1));
    month.getTime() <= to;
    month.setUTCMonth(month.getUTCMonth() + 1)
  ) {
    months.push(month.getTime())
  }
  const every = [1, 2, 3, 6, 12, 24, 60, 120].find((n) => months.length / n <= most) ?? 240
  return months.filter(
    (month) =>
      new Date(month).getUTCMonth() % Math.min(every, 12) === 0 &&
      (every <= 12 || new Date(month).getUTCFullYear() % (every / 12) === 0),
  )
}
