import { OutOfRange } from '../require.ts'

/** A calendar day as a whole number: days since 1970-01-01, whatever the zone. */
export type DayNumber = number

const dayMs = 86_400_000

/**
 * A day as a number, so that days can be counted.
 *
 * @throws {RangeError} text that is no day of the calendar
 * @example dayNumber('1970-02-01') // 31
 */
export function dayNumber(day: string): DayNumber {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(day) ? Date.parse(`${day}T00:00:00Z`) : Number.NaN
  // A day that its month does not have is read as one of the next month.
  if (Number.isNaN(ms) || dayText(ms / dayMs) !== day) {
    throw new RangeError(`day is ${day}, expected one such as 2026-03-03`)
  }
  return ms / dayMs
}

/** Whether text is a day of the calendar, `2026-03-03`. */
export function isDay(text: string): boolean {
  try {
    dayNumber(text)
    return true
  } catch {
    return false
  }
}

/**
 * A number of days since 1970-01-01 as the day it is.
 *
 * @throws {RangeError} a number that is not whole, or of no year of four digits
 * @example dayText(31) // '1970-02-01'
 */
export function dayText(day: DayNumber): string {
  if (!Number.isInteger(day) || day < -719_528 || day > 2_932_896) {
    throw new OutOfRange('day', day, 'a whole number of days, of a year from 0 to 9999')
  }
  return new Date(day * dayMs).toISOString().slice(0, 10)
}

/** A length of time as laws and contracts say it. */
export interface Term {
  /** A whole number, 1 to 10,000. */
  count: number
  unit: 'days' | 'months' | 'years'
}

/**
 * The last day of a term that begins on a day. Days are counted on; months and years lead to the day of the same number, and
 * where the month has none to its last (31 January and a month: 28 or 29 February).
 *
 * Source: the common way of the calendar (as in Regulation (EEC, Euratom) 1182/71, Article 3(2)(c), from memory). Whether a law
 * counts the first day is the law's to say: read it.
 *
 * @throws {RangeError} a count that is not whole or out of its range, a day that is none
 * @example termEnd(dayNumber('2028-01-31'), { count: 1, unit: 'months' }) // dayNumber('2028-02-29')
 */
export function termEnd(from: DayNumber, { count, unit }: Term): DayNumber {
  if (!Number.isInteger(count) || count < 1 || count > 10_000) {
    throw new OutOfRange('count', count, 'a whole number from 1 to 10,000')
  }
  if (unit === 'days') return dayNumber(dayText(from + count))
  const [year, month, date] = dayText(from).split('-').map(Number) as [number, number, number]
  const months = 12 * year + month - 1 + (unit === 'years' ? 12 : 1) * count
  const lastOfMonth = lastDateOf(Math.floor(months / 12), months % 12)
  return dayNumber(
    [
      String(Math.floor(months / 12)).padStart(4, '0'),
      String((months % 12) + 1).padStart(2, '0'),
      String(Math.min(date, lastOfMonth)).padStart(2, '0'),
    ].join('-'),
  )
}

/** How many days a month has; `month` from 0. */
function lastDateOf(year: number, month: number): number {
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  return [31, isLeap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month]!
}
