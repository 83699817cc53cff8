import { message } from '@sumpbook/fluid'
import type { SumpNow } from '../api/types.ts'
import { notLooked, type Seen } from './signs.ts'
import type { StopRecord } from './stop-record.ts'
import { nothingTested, type Tested } from './tested.ts'
import { nothingTyped, type Typed } from './typed.ts'

/** What was done at a sump on this round, in a word. */
export type Done = 'read' | 'poured' | 'not poured' | 'locked' | 'down'

/** One walk past the sumps. */
export interface Walk {
  /** Milliseconds since 1970, of the last thing done, or of when somebody began anew; 0 before either. */
  lastAt: number
  done: Readonly<Record<string, Done>>
  /** What was written down at each, latest visit. */
  records?: Readonly<Record<string, StopRecord>>
}

/** The same, said. */
export const doneWords: Readonly<Record<Done, string>> = {
  read: message('was read'),
  poured: message('poured'),
  'not poured': message('not poured'),
  locked: message('locked'),
  down: message('down'),
}

export const newWalk: Walk = { lastAt: 0, done: {} }

/** Begun anew, whatever was done before. */
export const walkBegun = (now: number): Walk => ({ lastAt: now, done: {} })

/** After this long without an entry the next one begins a new round. */
const walkEndsAfterMs = 8 * 3_600_000

/** The walk as it goes on now: a walk of yesterday is over. */
export const walkOn = (walk: Walk, now: number): Walk => (now - walk.lastAt > walkEndsAfterMs ? newWalk : walk)

export function markDone(walk: Walk, sump: string, what: Done, now: number, record?: StopRecord): Walk {
  const { done, records } = walkOn(walk, now)
  const all = record === undefined ? records : { ...records, [sump]: record }
  return { lastAt: now, done: { ...done, [sump]: what }, ...(all === undefined ? {} : { records: all }) }
}

/** The next sump that nobody has been at, from here on and then from the start; null where the round is done. */
export function nextStop(sumps: readonly Pick<SumpNow, 'sump'>[], walk: Walk, from: string | null): string | null {
  const at = from === null ? -1 : sumps.findIndex(({ sump }) => sump === from)
  const ahead = [...sumps.slice(at + 1), ...sumps.slice(0, Math.max(at, 0))]
  return ahead.find(({ sump }) => walk.done[sump] === undefined)?.sump ?? null
}

/** What stands in the fields at a sump before it is written down. */
export interface Draft {
  /** Another for each time that something is begun to be typed; '' until then. */
  id: string
  typed: Typed
  seen: Seen
  tested: Tested
  /** The picture taken, by its SHA-256; it lies with those that wait. */
  photo: string | null
}

export const emptyDraft: Draft = { id: '', typed: nothingTyped, seen: notLooked, tested: nothingTested, photo: null }

const walkKey = 'sumpbook.walk'
const draftKey = (sump: string) => `sumpbook.draft.${sump}`

/** Kept on the device, so that a page that is closed or a phone that dies loses nothing that was typed. */
export const loadWalk = (now: number): Walk => walkOn(load<Walk>(walkKey) ?? newWalk, now)
export const keepWalk = (walk: Walk): void => keep(walkKey, walk)
export const loadDraft = (sump: string): Draft => ({ ...emptyDraft, ...load<Draft>(draftKey(sump)) })
export const keepDraft = (sump: string, draft: Draft): void => keep(draftKey(sump), draft)
export function dropDraft(sump: string): void {
  try {
    localStorage.removeItem(draftKey(sump))
  } catch {
    // Storage is forbidden here: there is nothing to drop.
  }
}

function load<T>(key: string): T | null {
  try {
    const text = localStorage.getItem(key)
    return text === null ? null : (JSON.parse(text) as T)
  } catch {
    return null
  }
}

function keep(key: string, value: unknown): void {
  try {
    localStorage.setItem(key, JSON.stringify(value))
  } catch {
    // Full or forbidden: the fields hold it as long as the page is open.
  }
}
