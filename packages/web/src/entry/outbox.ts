import type { Entry, Problem } from '../api/types.ts'

/** An entry on its way to the book. */
export interface Waiting {
  entry: Entry
  /** What it says, for the person who looks at the queue: "Mill 7: 3.4 °Brix". */
  label: string
  /** Why the book said no; null while it is only waiting. */
  problem: Problem | null
}

/** What became of one attempt: taken, refused for good, or no answer yet. */
export type Sent = { outcome: 'taken' } | { outcome: 'refused'; problem: Problem } | { outcome: 'no-answer' }

/** The part of `Storage` that is used. */
export type Keep = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>

export interface Outbox {
  /** Oldest first. */
  list(): readonly Waiting[]
  /** Kept on this device before anything is sent. */
  add(items: readonly { entry: Entry; label: string }[]): void
  /** Sends what waits, oldest first. Ends at the first that gets no answer; resolves with the ids taken. */
  flush(): Promise<string[]>
  /** The person says the implausible values are right: their pointers go into `confirmed`, and it is sent again. */
  confirm(id: string): void
  /** Taken out by the person, unsent. */
  drop(id: string): void
  subscribe(listener: () => void): () => void
}

const prefix = 'sumpbook.outbox.'

/**
 * The queue between this device and the book. Each entry has a place of its own in storage, under its id, so that two
 * open pages of one device never overwrite each other's; ids rise with time, so their order is the order of writing.
 * An entry leaves only when the book has taken it or a person drops it. Sending twice is harmless: the id is the same.
 *
 * Storage that is full or forbidden loses nothing while the page is open: entries are then held in memory.
 */
export function openOutbox(keep: Keep, send: (entry: Entry) => Promise<Sent>): Outbox {
  const held = new Map<string, Waiting>()
  const listeners = new Set<() => void>()
  let snapshot: readonly Waiting[] = []
  let sending: Promise<string[]> | null = null

  const changed = () => {
    snapshot = [...stored(keep), ...held.values()].toSorted((a, b) => (a.entry.id < b.entry.id ? -1 : 1))
    for (const listener of listeners) listener()
  }
  const put = (waiting: Waiting) => {
    try {
      keep.setItem(prefix + waiting.entry.id, JSON.stringify(waiting))
      held.delete(waiting.entry.id)
    } catch {
      held.set(waiting.entry.id, waiting)
    }
  }
  const remove = (id: string) => {
    held.delete(id)
    keep.removeItem(prefix + id)
  }
  const find = (id: string) => snapshot.find(({ entry }) => entry.id === id)

  async function sendAll(): Promise<string[]> {
    changed()
    const taken: string[] = []
    for (const waiting of snapshot.filter(({ problem }) => problem === null)) {
      const sent = await send(waiting.entry)
      if (sent.outcome === 'no-answer') break
      if (sent.outcome === 'taken') {
        remove(waiting.entry.id)
        taken.push(waiting.entry.id)
      } else {
        put({ ...waiting, problem: sent.problem })
      }
      changed()
    }
    return taken
  }

  changed()
  return {
    list: () => snapshot,
    add(items) {
      for (const item of items) put({ ...item, problem: null })
      changed()
    },
    async flush() {
      while (sending !== null) await sending
      sending = sendAll().finally(() => {
        sending = null
      })
      return sending
    },
    confirm(id) {
      const waiting = find(id)
      if (waiting?.problem == null) return
      const pointers = (waiting.problem.errors ?? []).map(({ pointer }) => pointer)
      const confirmed = [...new Set([...(waiting.entry.confirmed ?? []), ...pointers])]
      put({ ...waiting, entry: { ...waiting.entry, confirmed }, problem: null })
      changed()
    },
    drop(id) {
      remove(id)
      changed()
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}

function stored(keep: Keep): Waiting[] {
  const found: Waiting[] = []
  for (let i = 0; i < keep.length; i++) {
    const key = keep.key(i)
    const text = key?.startsWith(prefix) === true ? keep.getItem(key) : null
    if (text !== null) found.push(JSON.parse(text) as Waiting)
  }
  return found
}
