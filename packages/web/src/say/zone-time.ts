/** The clock of a zone at an instant, as a field of day and time shows it: "2026-03-03T09:30". */
export function clockIn(timeZone: string, ms: number): string {
  const { year, month, day, hour, minute } = partsIn(timeZone, ms)
  return `${year}-${month}-${day}T${hour}:${minute}`
}

/**
 * The instant at which a zone's clock shows a day and time; the first of two in the hour that comes twice. Null where the text is no day
 * and time. A time that the clock leaves out in spring is taken an hour later, as the clock then shows.
 */
export function instantIn(timeZone: string, text: string): number | null {
  const wanted = /^\d{4}-\d\d-\d\dT\d\d:\d\d$/.test(text) ? Date.parse(`${text}:00Z`) : Number.NaN
  if (!Number.isFinite(wanted)) return null
  const offset = (ms: number) => Date.parse(`${clockIn(timeZone, ms)}:00Z`) - Math.floor(ms / 60_000) * 60_000
  // The offset of a day before and of a day after are all there can be about an instant.
  const tries = [wanted - offset(wanted - 86_400_000), wanted - offset(wanted + 86_400_000)]
  const exact = tries.filter((ms) => clockIn(timeZone, ms) === text)
  return exact.length > 0 ? Math.min(...exact) : tries[0]!
}

function partsIn(timeZone: string, ms: number): Record<'year' | 'month' | 'day' | 'hour' | 'minute', string> {
  const format = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  })
  return Object.fromEntries(format.formatToParts(ms).map(({ type, value }) => [type, value])) as ReturnType<
    typeof partsIn
  >
}
