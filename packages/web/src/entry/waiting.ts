import type { Entry, Problem } from '../api/types.ts'

/** An entry on its way to the book, or one that has lately arrived. */
export interface Waiting {
  entry: Entry
  /** What it says, for the person who looks at the queue: "Mill 7: 3.4 °Brix". */
  label: string
  /** Why the book said no; null while it only waits, and once it is taken. */
  problem: Problem | null
  /** What the server said when it failed over this very entry; such an entry is sent by itself, after the others. */
  fault: string | null
  /** Once the book has it; kept for a while, so that one can see that it arrived. */
  taken: Taken | null
  /** What the page that wrote it has to know of it after a crash; the book never sees it. */
  from?: object
}

/** An entry as a page writes it. */
export type Written = Pick<Waiting, 'entry' | 'label' | 'from'>

export interface Taken {
  /** This device's clock, ms since 1970. */
  at: number
  /** What it waits for in the book before it counts ("a keeper"); null where it counts. */
  heldFor: string | null
}

/** How far an entry has come. */
export type WaitingState = 'waiting' | 'sending' | 'taken' | 'held' | 'not-taken'

export function stateOf({ entry, problem, taken }: Waiting, sending: ReadonlySet<string>): WaitingState {
  if (taken !== null) return taken.heldFor === null ? 'taken' : 'held'
  if (problem !== null) return 'not-taken'
  return sending.has(entry.id) ? 'sending' : 'waiting'
}

/** Whether the book does not have it yet. */
export const isOnDevice = ({ taken }: Pick<Waiting, 'taken'>): boolean => taken === null

/** Ids rise with time, so their order is the order of writing. */
export const byId = (a: Waiting, b: Waiting): number => (a.entry.id < b.entry.id ? -1 : a.entry.id > b.entry.id ? 1 : 0)

export const justWritten = ({ entry, label, from }: Written): Waiting => ({
  entry,
  label,
  ...(from === undefined ? {} : { from }),
  problem: null,
  fault: null,
  taken: null,
})
