import { datesLocale, say } from '@sumpbook/fluid'

/** How a time is said: in whose zone, seen from when. */
export interface WhenReader {
  timeZone: string
  /** RFC 3339. */
  now: string
}

/** "today 07:42", "yesterday 07:42", "Tue 07:42, 3 days ago", "Tue 3 Nov 07:42, 22 days ago"; calendar days of the shop. */
export function sayWhen(at: string, { timeZone, now }: WhenReader): string {
  const days = calendarDaysBetween(at, now, timeZone)
  const time = format(at, timeZone, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })
  if (days === 0) return say('today {time}', { time })
  if (days === 1) return say('yesterday {time}', { time })
  if (days < 0) return sayDayAndTime(at, timeZone)
  const day = days < 7 ? format(at, timeZone, { weekday: 'short' }) : sayDay(at, timeZone, now)
  return say('{day} {time}, {days, plural, one {# day} other {# days}} ago', { day, time, days })
}

/** "Tue 07:42" within the week, "3 Nov 07:42" before it: for a narrow line. */
export function sayWhenShort(at: string, { timeZone, now }: WhenReader): string {
  const days = calendarDaysBetween(at, now, timeZone)
  const time = format(at, timeZone, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })
  if (days === 0) return say('today {time}', { time })
  if (days > 0 && days < 7) return `${format(at, timeZone, { weekday: 'short' })} ${time}`
  return `${format(at, timeZone, { day: 'numeric', month: 'short' })} ${time}`
}

/** "Tue 3 Nov 07:42": for paper, on which no day stays today. */
export const sayDayAndTime = (at: string, timeZone: string): string =>
  `${sayDay(at, timeZone)} ${format(at, timeZone, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })}`

/** "Tue 3 Nov"; with the year where it is not that of `now`. */
export function sayDay(at: string, timeZone: string, now?: string): string {
  const year = (instant: string) => format(instant, timeZone, { year: 'numeric' })
  const other = now !== undefined && year(at) !== year(now)
  return format(at, timeZone, {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    ...(other ? { year: 'numeric' } : {}),
  }).replace(',', '')
}

export const sayTime = (at: string, timeZone: string) =>
  format(at, timeZone, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })

/** "2026-11-25", the calendar day in a zone. */
export function dayIn(at: string, timeZone: string): string {
  return formatIn('en-CA', timeZone, { year: 'numeric', month: '2-digit', day: '2-digit' }).format(new Date(at))
}

/** Calendar days from one instant's day to another's, in a zone. */
export function calendarDaysBetween(from: string, to: string, timeZone: string): number {
  return (Date.parse(dayIn(to, timeZone)) - Date.parse(dayIn(from, timeZone))) / 86_400_000
}

const format = (at: string, timeZone: string, options: Intl.DateTimeFormatOptions) =>
  formatIn(datesLocale(), timeZone, options).format(new Date(at))

const made = new Map<string, Intl.DateTimeFormat>()

/** One format for each way to say a time: making one takes far longer than using it, and a page says hundreds of times. */
function formatIn(language: string, timeZone: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${language} ${timeZone} ${JSON.stringify(options)}`
  const there = made.get(key)
  if (there !== undefined) return there
  const fresh = new Intl.DateTimeFormat(language, { timeZone, ...options })
  made.set(key, fresh)
  return fresh
}
