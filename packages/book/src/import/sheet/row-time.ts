import { say } from '@sumpbook/fluid'
import type { Fault } from '../../errors.ts'
import { type Clock, clockOfFraction, readClock } from './clock.ts'
import { type DateOrder, orderWords } from './date-order.ts'
import { exists, inOrder, readDateText, type WallTime } from './dates.ts'
import { type Cell, textOf } from './sheet-rows.ts'
import type { ZoneClock, ZonedInstant } from './zone.ts'

/** How the times of a sheet are read. */
export interface TimeReading {
  /** Null while it is asked: then a date that is a day in either order is let pass. */
  order: DateOrder | null
  zone: ZoneClock
  /** Numbers are days since the beginning of 1900 only in a workbook. */
  workbook: boolean
}

/** When a row's readings were taken. */
export interface RowTime extends ZonedInstant {
  typed: string
  shortYear: boolean
}

/** What is wrong with a date or a time: found, expected, and in which of the two cells. */
export type TimeFault = Pick<Fault, 'found' | 'expected'> & { cell: 'at' | 'time' }

const expectedDate = () => say('a date such as 2026-10-05, 05.10.2026 or 10/5/2026')
const expectedTime = () => say('a time of day such as 14:30 or 2:30 PM')

/** The instant of a row's date and time cells; a day alone is taken as noon in the shop's zone. */
export function readRowTime(date: Cell | undefined, time: Cell | undefined, reading: TimeReading): RowTime | TimeFault {
  const dateText = textOf(date)
  if (dateText === '') return { cell: 'at', found: say('nothing'), expected: expectedDate() }
  const day = wallOf(date!, dateText, reading)
  if ('expected' in day || 'at' in day) return day
  const timeText = textOf(time)
  if (timeText === '' || timeText === '-') return finish(day, dateText, reading)
  const clock = clockOf(time!, timeText, reading)
  if (clock === null) return { cell: 'time', found: JSON.stringify(timeText), expected: expectedTime() }
  if (day.clock !== null && !sameClock(day.clock, clock)) {
    return {
      cell: 'time',
      found: JSON.stringify(timeText),
      expected: say('the same time as in "{date}", or one of the two', { date: dateText }),
    }
  }
  return finish({ ...day, clock }, day.clock === null ? `${dateText} ${timeText}` : dateText, reading)
}

function finish(wall: WallTime, typed: string, { zone }: TimeReading): RowTime {
  return { ...zone.instantOf(wall), typed, shortYear: wall.shortYear }
}

function wallOf(cell: Cell, text: string, reading: TimeReading): WallTime | RowTime | TimeFault {
  const fault = (expected: string): TimeFault => ({ cell: 'at', found: JSON.stringify(text), expected })
  if (cell instanceof Date || (typeof cell === 'number' && reading.workbook)) {
    const wall = cell instanceof Date ? wallOfDate(cell) : wallOfSerial(cell)
    return wall !== null && exists(wall) ? wall : fault(expectedDate())
  }
  const read = typeof cell === 'string' ? readDateText(text) : null
  if (read === null) return fault(expectedDate())
  if (read.kind === 'instant') return instantOf(read.instant, text) ?? fault(expectedDate())
  if (read.kind === 'wall') return exists(read.wall) ? read.wall : fault(say('a day that the calendar has'))
  const orders: DateOrder[] = reading.order === null ? ['dmy', 'mdy'] : [reading.order]
  const days = orders.flatMap((order) => inOrder(read, order) ?? [])
  return days.find(exists) ?? fault(dayInOrder(orders))
}

function dayInOrder([one, other]: readonly DateOrder[]): string {
  const words = { one: say(orderWords[one!]), other: other === undefined ? '' : say(orderWords[other]) }
  return other === undefined
    ? say('a day that the calendar has, as {one}', words)
    : say('a day that the calendar has, as {one} or {other}', words)
}

function instantOf(text: string, typed: string): RowTime | null {
  const milliseconds = Date.parse(text.toUpperCase())
  return !(milliseconds >= 0 && milliseconds < Date.UTC(2100, 0, 1))
    ? null
    : { at: new Date(milliseconds).toISOString(), shift: null, typed, shortYear: false }
}

/** The wall's clock stands in the UTC fields; a day without a time of day is midnight there. */
function wallOfDate(date: Date): WallTime | null {
  const milliseconds = date.getTime()
  if (Number.isNaN(milliseconds)) return null
  const whole = new Date(Math.round(milliseconds / 1000) * 1000)
  const clock = { hour: whole.getUTCHours(), minute: whole.getUTCMinutes(), second: whole.getUTCSeconds() }
  const midnight = clock.hour === 0 && clock.minute === 0 && clock.second === 0
  return {
    year: whole.getUTCFullYear(),
    month: whole.getUTCMonth() + 1,
    day: whole.getUTCDate(),
    clock: midnight ? null : clock,
    shortYear: false,
  }
}

/** Days since 30 December 1899, as workbooks count them after February 1900 (ECMA-376 part 1, §18.17.4.1). */
function wallOfSerial(serial: number): WallTime | null {
  return serial > 0 && serial < 100_000 ? wallOfDate(new Date(Date.UTC(1899, 11, 30) + serial * 86_400_000)) : null
}

function clockOf(cell: Cell, text: string, { workbook }: TimeReading): Clock | null {
  if (cell instanceof Date)
    return { hour: cell.getUTCHours(), minute: cell.getUTCMinutes(), second: cell.getUTCSeconds() }
  if (typeof cell === 'number') return workbook && cell >= 0 && cell < 1 ? clockOfFraction(cell) : null
  return readClock(text)
}

const sameClock = (a: Clock, b: Clock) => a.hour === b.hour && a.minute === b.minute && a.second === b.second
