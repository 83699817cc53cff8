import { datesLocale } from '../words/index.ts'
import type { Reader } from './units.ts'

/** How a day to come is said: in whose zone, seen from when, in whose language. */
export interface DayReader extends Pick<Reader, 'locale'> {
  /** IANA name of the shop's zone. */
  timeZone: string
  /** RFC 3339. */
  now: string
}

const dayMs = 86_400_000

/** "today", "tomorrow", "Thursday" within the week, "Thu 14 Jan" after it; calendar days of the zone. */
export function sayDayAhead(at: string, reader: DayReader): string {
  const days = calendarDays(reader.now, at, reader.timeZone)
  if (days === 0) return 'today'
  if (days === 1) return 'tomorrow'
  const { weekday, short, day, month } = partsOf(at, reader)
  return days > 1 && days < 7 ? weekday : `${short} ${day} ${month}`
}

/** The same inside a sentence: "today", "tomorrow", "on Thursday". */
export function sayOnDay(at: string, reader: DayReader): string {
  const day = sayDayAhead(at, reader)
  return day === 'today' || day === 'tomorrow' ? day : `on ${day}`
}

/** Calendar days from one instant's day to another's, in a zone. */
function calendarDays(from: string, to: string, timeZone: string): number {
  const dayOf = (at: string) => Date.parse(`${formatOf('en-CA', timeZone).format(new Date(at))}T00:00:00Z`)
  return Math.round((dayOf(to) - dayOf(from)) / dayMs)
}

function partsOf(at: string, { timeZone, locale = datesLocale() }: DayReader) {
  const instant = new Date(at)
  const part = (type: 'weekday' | 'day' | 'month', style: 'long' | 'short' | 'numeric') =>
    formatOf(locale, timeZone, type, style).format(instant)
  return {
    weekday: part('weekday', 'long'),
    short: part('weekday', 'short'),
    day: part('day', 'numeric'),
    month: part('month', 'short'),
  }
}

/** Making a format takes far longer than using it: each is made once. */
const formats = new Map<string, Intl.DateTimeFormat>()

function formatOf(
  locale: string,
  timeZone: string,
  type?: 'weekday' | 'day' | 'month',
  style?: 'long' | 'short' | 'numeric',
): Intl.DateTimeFormat {
  const key = `${locale} ${timeZone} ${type} ${style}`
  const known = formats.get(key)
  if (known !== undefined) return known
  const numeric = { year: 'numeric', month: '2-digit', day: '2-digit' } as const
  const format = new Intl.DateTimeFormat(locale, { timeZone, ...(type === undefined ? numeric : { [type]: style }) })
  formats.set(key, format)
  return format
}
