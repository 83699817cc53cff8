import type { EntryQuery } from './store.ts'

/**
 * The instants between which a query still has to look. Where one reads on after an entry, that entry's place says as much as the edge that lies
 * before it; given both, SQLite seeks the edge and passes over everything between, page after page.
 */
export function edges({ since, until, order, after }: EntryQuery): Pick<EntryQuery, 'since' | 'until'> {
  const place = after === undefined || 'seq' in after ? null : after.at
  const sinceIsSaid = order === 'time' && place !== null && since !== undefined && place >= since
  const untilIsSaid = order === 'time-backwards' && place !== null && until !== undefined && place <= until
  return {
    ...(since === undefined || sinceIsSaid ? {} : { since }),
    ...(until === undefined || untilIsSaid ? {} : { until }),
  }
}
