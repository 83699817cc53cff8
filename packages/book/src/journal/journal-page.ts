import type { Reader } from '@sumpbook/fluid'
import { BookError } from '../errors.ts'
import { keptThings } from '../setup/thing-cache.ts'
import type { JournalReader, StoredEntry } from '../store/store.ts'
import { asksLines, type JournalFilter, lineMatches, storeQuery } from './journal-filter.ts'
import { type JournalLine, lineOf, readWithdrawals } from './lines.ts'

/** Entries looked through at a time where lines are looked for by words or by who wrote them. */
const linesAtOnce = 1000
/** Entries looked through for one page: whoever looks for something rare is told how far back, and asks on. */
const linesAPage = 20_000

/** One page of the journal. */
export interface JournalQuestion {
  limit: number
  /** The `next` of the page before. */
  cursor?: string | undefined
  filter?: JournalFilter
  reader?: Partial<Reader>
  /** Entries looked through at most, in thousands. */
  lookThrough?: number
}

/** Lines of the journal, youngest first. */
export interface JournalPage {
  entries: JournalLine[]
  /** Where the next page begins; null where there is nothing further back. */
  next: string | null
  /** How far back was looked; null down to the first entry. */
  lookedBackTo: string | null
}

/**
 * The journal of the shop or what a filter leaves of it, youngest first, page by page. A page may be short of `limit`, or empty, while
 * `next` says that there is more to look through.
 *
 * @throws {BookError} `refused-input` a cursor or a span of days that is none
 */
export async function journalPage(
  journal: JournalReader,
  { limit, cursor, filter = {}, reader = {}, lookThrough = linesAPage }: JournalQuestion,
): Promise<JournalPage> {
  const [history, withdrawals] = await Promise.all([keptThings(journal), readWithdrawals(journal)])
  const now = history.at()
  const asked = storeQuery(filter, now.shop.timeZone)
  const matches = lineMatches(filter)
  const atOnce = asksLines(filter) ? linesAtOnce : limit + 1
  const entries: JournalLine[] = []
  let [after, last] = [cursor === undefined ? undefined : placeOf(cursor), null as Place | null]
  for (let looked = 0; looked < lookThrough; looked += atOnce) {
    const stored = await journal.entries({
      ...asked,
      order: 'time-backwards',
      limit: atOnce,
      ...(after === undefined ? {} : { after }),
    })
    for (const one of stored) {
      const line = lineOf(one, now, withdrawals, reader)
      if (!matches(line)) continue
      if (entries.length === limit) return { entries, next: cursorOf(last!), lookedBackTo: last!.at }
      entries.push(line)
      last = one
    }
    if (stored.length < atOnce) return { entries, next: null, lookedBackTo: null }
    after = placeIn(stored.at(-1)!)
  }
  return { entries, next: cursorOf(after!), lookedBackTo: after!.at }
}

type Place = Pick<StoredEntry, 'at' | 'rank' | 'id'>

/** An entry's place in time, without its place of arrival: the store would go on by that. */
const placeIn = ({ at, rank, id }: StoredEntry): Place => ({ at, rank, id })

const cursorOf = ({ at, rank, id }: Place) => Buffer.from(JSON.stringify([at, rank, id])).toString('base64url')

function placeOf(cursor: string): Place {
  try {
    const [at, rank, id] = JSON.parse(Buffer.from(cursor, 'base64url').toString()) as [string, number, string]
    if (typeof at === 'string' && typeof rank === 'number' && typeof id === 'string') return { at, rank, id }
  } catch {
    // Not one of ours: refused below, like any other text.
  }
  throw new BookError('refused-input', 'The cursor is not one this book gave.', [
    { pointer: '/cursor', found: JSON.stringify(cursor.slice(0, 40)), expected: 'the `next` of the page before' },
  ])
}
