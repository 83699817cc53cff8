import { unitsHere } from '@sumpbook/fluid'
import type { BookParts, TodayReader } from '../book-parts.ts'
import { mapInTurns } from '../in-turns.ts'
import type { Things } from '../setup/things.ts'
import { lastReadings, lastReadingsOfShop } from './last-readings.ts'
import { sumpNow } from './sump-now.ts'
import type { SumpItem } from './today.ts'

/** When is asked, and for whom. */
export interface TodayQuestion {
  /** The time of asking; what is due comes from it. */
  at: Date
  /** Entries after it do not count; the time of asking unless given. */
  until?: Date
  reader?: TodayReader
  /** Who asks: what others have claimed is no news to them. */
  person?: string | null
}

/**
 * Every sump as it stands, or one alone.
 *
 * @throws {BookError} `not-found` a sump the book does not have
 */
export async function readSumps(
  { journal, checkpoints, things }: BookParts,
  { at, until = at, reader = {}, sump }: TodayQuestion & { sump?: string },
): Promise<{ items: SumpItem[]; things: Things }> {
  const { standing, sumps } = await checkpoints.standing(until.getTime(), sump)
  const text = until.toISOString()
  const read = await (sump === undefined
    ? lastReadingsOfShop(journal, await things(), text)
    : lastReadings(journal, await things(), { sumps, until: text }))
  const asked = { at: at.toISOString(), reader: { units: unitsHere(standing.things.shop), ...reader } }
  const items = await mapInTurns(sumps, (one) => sumpNow(standing, one, read.get(one.id)!, asked))
  return { items, things: standing.things }
}
