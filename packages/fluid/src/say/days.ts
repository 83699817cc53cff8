import { datesLocale, say } from '../words/index.ts'
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
  const { which, day } = dayAhead(at, reader)
  if (which === 'today') return say('today')
  return which === 'tomorrow' ? say('tomorrow') : day
}

/** The same inside a sentence: "today", "tomorrow", "on Thursday". */
export function sayOnDay(at: string, reader: DayReader): string {
  const { which, day } = dayAhead(at, reader)
  if (which === 'today') return say('today')
  return which === 'tomorrow' ? say('tomorrow') : say('on {day}', { day })
}

/** Until when something holds: "until today", "until tomorrow", "until Thursday". */
export function sayUntilDay(at: string, reader: DayReader): string {
  const { which, day } = dayAhead(at, reader)
  return say('until {which, select, today {today} tomorrow {tomorrow} other {{day}}}', { which, day })
}

/** Which day that is, for sentences that say today and tomorrow in a way of their own; the day by its name. */
export function dayAhead(at: string, reader: DayReader): { which: 'today' | 'tomorrow' | 'other'; day: string } {
  const days = calendarDays(reader.now, at, reader.timeZone)
  const which = days === 0 ? 'today' : days === 1 ? 'tomorrow' : 'other'
  return { which, day: days > 1 && days < 7 ? partOf(at, reader, { weekday: 'long' }) : shortDay(at, reader) }
}

/** Calendar days from one instant's day to another's, in a zone. */
function calendarDays(from: string, to: string, timeZone: string): number {
  const dayOf = (at: string) => Date.parse(`${formatOf('en-CA', timeZone, numeric).format(new Date(at))}T00:00:00Z`)
  return Math.round((dayOf(to) - dayOf(from)) / dayMs)
}

/** "Thu 14 Jan" in every English; in other languages as they order a date, "Do. 14. Jan.". */
function shortDay(at: string, reader: DayReader): string {
  const parts = [{ weekday: 'short' }, { day: 'numeric' }, { month: 'short' }] as const
  const isEnglish = (reader.locale ?? datesLocale()).startsWith('en')
  return isEnglish
    ? parts.map((part) => partOf(at, reader, part)).join(' ')
    : partOf(at, reader, { weekday: 'short', day: 'numeric', month: 'short' }).replace(',', '')
}

const partOf = (at: string, { timeZone, locale = datesLocale() }: DayReader, parts: DayParts) =>
  formatOf(locale, timeZone, parts).format(new Date(at))

type DayParts = Pick<Intl.DateTimeFormatOptions, 'year' | 'weekday' | 'day' | 'month'>
const numeric: DayParts = { year: 'numeric', month: '2-digit', day: '2-digit' }

/** Making a format takes far longer than using it: each is made once. */
const formats = new Map<string, Intl.DateTimeFormat>()

function formatOf(locale: string, timeZone: string, parts: DayParts): Intl.DateTimeFormat {
  const key = `${locale} ${timeZone} ${Object.entries(parts).join()}`
  const known = formats.get(key)
  if (known !== undefined) return known
  const format = new Intl.DateTimeFormat(locale, { timeZone, ...parts })
  formats.set(key, format)
  return format
}
