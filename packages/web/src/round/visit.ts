import { outbox } from '../entry/book-outbox.ts'
import type { Waiting } from '../entry/waiting.ts'
import type { StopRecord } from './stop-record.ts'
import { type Done, dropDraft, keepWalk, loadDraft, loadWalk, markDone, type Walk } from './walk.ts'

/**
 * What a stop came to, kept with its entries. Those are on the disk as soon as they are written; the walk and what stands in the fields
 * are written through by the browser when it likes, some seconds later.
 */
export interface Visit {
  /** What stood in the fields, by its id. */
  draft: string
  sump: string
  done: Done | null
  /** Milliseconds since 1970, by this device. */
  at: number
  record: StopRecord
}

/** A browser that does not open its storage is not waited for: then the walk is what it was. */
const patienceMs = 1_500

/**
 * Brings the walk and the fields up to what was written. A phone that died just after it wrote a stop has forgotten that it did: it would
 * show the stop as not visited and what was typed as not written, and somebody would write it twice.
 */
export async function catchUp(): Promise<void> {
  await Promise.race([outbox.look(), new Promise((resolve) => setTimeout(resolve, patienceMs))])
  const visits = visitsOf(outbox.view().all)
  for (const { draft, sump } of visits) if (draft !== '' && loadDraft(sump).id === draft) dropDraft(sump)
  const walk = loadWalk(Date.now())
  const next = walkCaughtUp(walk, visits, Date.now())
  if (next !== walk) keepWalk(next)
}

/** The visits that entries of this device's queue tell of, oldest first; what other versions of the app kept there tells of none. */
export const visitsOf = (all: readonly Pick<Waiting, 'from'>[]): Visit[] =>
  all.flatMap(({ from }) => (isVisit(from) ? [from] : [])).toSorted((a, b) => a.at - b.at)

const isVisit = (from: object | undefined): from is Visit => from !== undefined && 'draft' in from && 'sump' in from

/** The walk with what was done since its last thing; the same walk where that is nothing. */
export function walkCaughtUp(walk: Walk, visits: readonly Visit[], now: number): Walk {
  const missed = visits.filter(({ at, done }) => done !== null && at > walk.lastAt && at <= now)
  return missed.reduce((next, { sump, done, at, record }) => markDone(next, sump, done!, at, record), walk)
}
