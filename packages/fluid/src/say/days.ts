import { type DayNumber, dayNumber } from '../calendar/day-number.ts'
import { datesLocale, madeOnce, say } from '../words/index.ts'
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
  const ahead = dayIn(reader.timeZone, at) - dayIn(reader.timeZone, reader.now)
  const which = ahead === 0 ? 'today' : ahead === 1 ? 'tomorrow' : 'other'
  return { which, day: ahead > 1 && ahead < 7 ? partOf(at, reader, 'weekday') : shortDay(at, reader) }
}

/** Days begin, and clocks are moved, at whole quarters of an hour, but for a few of the past. */
const quarterMs = 15 * 60_000
const daysOfQuarters = madeOnce<string, number, DayNumber | 'two'>(20_000)

/** The calendar day of an instant in a zone. */
function dayIn(timeZone: string, at: string): DayNumber {
  const ms = Date.parse(at)
  const of = (instant: number) => dayNumber(formatOf('en-CA', timeZone, 'date').format(instant))
  const quarter = Math.floor(ms / quarterMs)
  const day = daysOfQuarters(timeZone, quarter, () => {
    const [first, last] = [of(quarter * quarterMs), of((quarter + 1) * quarterMs - 1)]
    return first === last ? first : 'two'
  })
  return day === 'two' ? of(ms) : day
}

/** "Thu 14 Jan" in every English; in other languages as they order a date, "Do. 14. Jan.". */
function shortDay(at: string, reader: DayReader): string {
  const isEnglish = (reader.locale ?? datesLocale()).startsWith('en')
  return isEnglish
    ? `${partOf(at, reader, 'short weekday')} ${partOf(at, reader, 'day')} ${partOf(at, reader, 'month')}`
    : partOf(at, reader, 'day and month').replace(',', '')
}

const parts = {
  date: { year: 'numeric', month: '2-digit', day: '2-digit' },
  weekday: { weekday: 'long' },
  'short weekday': { weekday: 'short' },
  day: { day: 'numeric' },
  month: { month: 'short' },
  'day and month': { weekday: 'short', day: 'numeric', month: 'short' },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>
type DayPart = keyof typeof parts

/** Of the calendar day, whatever the zone it is one of. */
function partOf(at: string, { timeZone, locale = datesLocale() }: DayReader, part: DayPart): string {
  const day = dayIn(timeZone, at)
  return written(`${locale} ${part}`, day, () => formatOf(locale, 'UTC', part).format(day * dayMs))
}
const written = madeOnce<string, DayNumber, string>(20_000)

/** Making a format takes far longer than using it: each is made once. */
const formats = madeOnce<string, string, Intl.DateTimeFormat>(1000)

const formatOf = (locale: string, timeZone: string, part: DayPart) =>
  formats(locale, `${timeZone} ${part}`, () => new Intl.DateTimeFormat(locale, { timeZone, ...parts[part] }))
