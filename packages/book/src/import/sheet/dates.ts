import { type Clock, readClock } from './clock.ts'
import type { DateOrder } from './date-order.ts'
import { monthNamed, withoutWeekday } from './date-words.ts'

/** A calendar day and, where it was written, the time of day. */
export interface WallTime {
  year: number
  month: number
  day: number
  clock: Clock | null
  /** Whether the year was written with two digits. */
  shortYear: boolean
}

/** What a date's text says before day and month are told apart. */
export type DateText =
  /** Nothing in doubt. */
  | { kind: 'wall'; form: 'year-first' | 'dotted' | 'named'; wall: WallTime }
  /** RFC 3339 with offset: an instant already. */
  | { kind: 'instant'; instant: string }
  /** Three numbers in an order to be found, the third the year unless `ymd` is meant. */
  | { kind: 'numbers'; parts: readonly [Part, Part, Part]; clock: Clock | null }

interface Part {
  value: number
  digits: number
}

const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ]\s*(.+))?$/
const offsetTime = /^\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:Z|[+-]\d{2}:\d{2})$/i
const compact = /^(\d{4})(\d{2})(\d{2})$/
const yearFirst = /^(\d{4})[./](\d{1,2})[./](\d{1,2})(?:,?\s+(.+))?$/
const dotted = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4}|\d{2})(?:,?\s+(.+))?$/
const numbers = /^(\d{1,2})\s?[/-]\s?(\d{1,2})\s?[/-]\s?(\d{4}|\d{2})(?:,?\s+(.+))?$/
const dayMonthName = /^(\d{1,2})\.?[\s-]*(?:de\s+)?(\p{L}{3,})\.?,?[\s-]*(?:del?\s+)?(\d{4}|\d{2})(?:,?\s+(.+))?$/u
const monthNameDay = /^(\p{L}{3,})\.?[\s-]*(\d{1,2})(?:st|nd|rd|th)?,?[\s-]+(\d{4}|\d{2})(?:,?\s+(.+))?$/iu

/**
 * Reads the text of a date as far as the text alone goes: ISO, dotted (always day.month.year), with the month's name, or
 * three numbers with slashes or dashes, whose order only the whole column can tell. Null where it is no date.
 */
export function readDateText(text: string): DateText | null {
  const bare = withoutWeekday(text)
  if (offsetTime.test(bare)) return { kind: 'instant', instant: bare.replace(' ', 'T') }
  let found = iso.exec(bare) ?? yearFirst.exec(bare) ?? compact.exec(bare)
  if (found !== null) return wall('year-first', [found[1]!, found[2]!, found[3]!], found[4])
  found = dotted.exec(bare)
  if (found !== null) return wall('dotted', [found[3]!, found[2]!, found[1]!], found[4])
  found = numbers.exec(bare)
  if (found !== null) return threeNumbers(found)
  found = dayMonthName.exec(bare)
  if (found !== null) return named(found[3]!, found[2]!, found[1]!, found[4])
  found = monthNameDay.exec(bare)
  return found === null ? null : named(found[3]!, found[1]!, found[2]!, found[4])
}

/** The day and time that three numbers mean in this order; null where they fit it in no way (a year where a day belongs). */
export function inOrder(
  { parts: [a, b, c], clock }: Extract<DateText, { kind: 'numbers' }>,
  order: DateOrder,
): WallTime | null {
  const [day, month, year] = order === 'dmy' ? [a, b, c] : order === 'mdy' ? [b, a, c] : [c, b, a]
  if (day.digits > 2 || (order === 'ymd' && year.digits !== 2)) return null
  return {
    day: day.value,
    month: month.value,
    year: fullYear(year.value, year.digits),
    clock,
    shortYear: year.digits === 2,
  }
}

/** Whether the calendar has such a day, within the years a log can hold (1970 to 2099). */
export function exists({ year, month, day }: WallTime): boolean {
  if (year < 1970 || year > 2099 || month < 1 || month > 12 || day < 1) return false
  return day <= new Date(Date.UTC(year, month, 0)).getUTCDate()
}

/** Two digits are 2000 to 2069 and 1970 to 1999. */
const fullYear = (value: number, digits: number) => (digits > 2 ? value : value < 70 ? 2000 + value : 1900 + value)

type Wall = Extract<DateText, { kind: 'wall' }>

function wall(form: Wall['form'], [year, month, day]: [string, string, string], time: string | undefined): Wall | null {
  const clock = clockOf(time)
  if (clock === undefined) return null
  const full = fullYear(Number(year), year.length)
  return {
    kind: 'wall',
    form,
    wall: { year: full, month: Number(month), day: Number(day), clock, shortYear: year.length === 2 },
  }
}

function named(year: string, month: string, day: string, time: string | undefined): DateText | null {
  const number = monthNamed(month)
  return number === null ? null : wall('named', [year, String(number), day], time)
}

function threeNumbers([, a, b, c, time]: RegExpExecArray): DateText | null {
  const clock = clockOf(time)
  if (clock === undefined) return null
  const part = (text: string): Part => ({ value: Number(text), digits: text.length })
  return { kind: 'numbers', parts: [part(a!), part(b!), part(c!)], clock }
}

/** Null without a time, undefined where what follows the day is none. */
function clockOf(time: string | undefined): Clock | null | undefined {
  return time === undefined || time.trim() === '' ? null : (readClock(time) ?? undefined)
}
