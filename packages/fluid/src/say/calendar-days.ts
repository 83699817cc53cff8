import { type DayNumber, dayText } from '../calendar/day-number.ts'
import { datesLocale, say } from '../words/index.ts'
import type { Reader } from './units.ts'

/** From which day a calendar day is seen, and in whose language. */
export interface CalendarReader extends Pick<Reader, 'locale'> {
  today: DayNumber
}

/** Days from which on a day's year is said along. */
const yearFrom = 300

/** "12 January"; "12 January 2028" where it is far away. */
export function sayCalendarDay(day: DayNumber, { today, locale = datesLocale() }: CalendarReader): string {
  const isFar = Math.abs(day - today) >= yearFrom
  return formatOf(locale, isFar).format(new Date(`${dayText(day)}T12:00:00Z`))
}

/** Inside a sentence: "today", "tomorrow", "on 12 January". */
export function sayOnDate(day: DayNumber, reader: CalendarReader): string {
  const ahead = day - reader.today
  if (ahead === 0) return say('today')
  return ahead === 1 ? say('tomorrow') : say('on {date}', { date: sayCalendarDay(day, reader) })
}

/** By when something is to be done: "today" where that is past, "by tomorrow", "by 12 January". */
export function sayByDate(day: DayNumber, reader: CalendarReader): string {
  const ahead = day - reader.today
  if (ahead <= 0) return say('today')
  return ahead === 1 ? say('by tomorrow') : say('by {date}', { date: sayCalendarDay(day, reader) })
}

const formats = new Map<string, Intl.DateTimeFormat>()

function formatOf(locale: string, withYear: boolean): Intl.DateTimeFormat {
  const key = `${locale} ${withYear}`
  const known = formats.get(key)
  if (known !== undefined) return known
  const format = new Intl.DateTimeFormat(locale, {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'long',
    ...(withYear ? { year: 'numeric' } : {}),
  })
  formats.set(key, format)
  return format
}
