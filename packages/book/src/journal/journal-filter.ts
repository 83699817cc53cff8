import { refusal } from '../errors.ts'
import type { EntryQuery } from '../store/store.ts'
import { startOfDay } from './calendar.ts'
import type { JournalLine } from './lines.ts'

/** Which lines of the journal are asked for; everything named must hold. */
export interface JournalFilter {
  sump?: string | undefined
  kinds?: readonly string[] | undefined
  /** Who wrote, by what the line says: any of these, capitals or not. */
  by?: readonly string[] | undefined
  /** First day, in the shop's zone. */
  from?: string | undefined
  /** Last day, included. */
  to?: string | undefined
  /** Words that all stand somewhere in the line, notes and reasons included; capitals do not matter. */
  words?: string | undefined
}

/**
 * What the store can look for by its indexes.
 *
 * @throws {BookError} `refused-input` where the last day lies before the first
 */
export function storeQuery(
  { sump, kinds, from, to }: JournalFilter,
  timeZone: string,
): Pick<EntryQuery, 'sump' | 'kinds' | 'since' | 'until'> {
  if (from !== undefined && to !== undefined && to < from) {
    throw refusal([{ pointer: '/to', found: `"${to}"`, expected: `a day from "${from}" on` }], 'request')
  }
  return {
    ...(sump === undefined ? {} : { sump }),
    ...(kinds === undefined || kinds.length === 0 ? {} : { kinds }),
    ...(from === undefined ? {} : { since: startOfDay(from, timeZone) }),
    ...(to === undefined ? {} : { until: endOfDay(to, timeZone) }),
  }
}

/** Whether the rest of the filter has to be looked for line by line. */
export const asksLines = ({ by, words = '' }: JournalFilter): boolean => by !== undefined || words.trim() !== ''

/** Whether a line is by whom and has the words that are asked for. */
export function lineMatches(filter: JournalFilter): (line: Pick<JournalLine, 'by' | 'text' | 'reason'>) => boolean {
  const names = filter.by?.map((name) => name.trim().toLowerCase())
  const words = (filter.words ?? '')
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '')
  return ({ by, text, reason }) => {
    if (names !== undefined && (by === null || !names.includes(by.trim().toLowerCase()))) return false
    const said = `${text} ${reason ?? ''}`.toLowerCase()
    return words.every((word) => said.includes(word))
  }
}

/** The last millisecond of a day: days are of 23 hours, and of 25. */
function endOfDay(day: string, timeZone: string): string {
  const next = new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10)
  return new Date(Date.parse(startOfDay(next, timeZone)) - 1).toISOString()
}
