import type { Entry, Problem } from '../api/types.ts'
import type { OutboxKeep } from './outbox-keep.ts'
import { byId, isOnDevice, justWritten, type Waiting, type Written } from './waiting.ts'

/** What the book said of one entry. */
export type Said =
  | { id: string; outcome: 'taken'; heldFor: string | null }
  | { id: string; outcome: 'refused'; problem: Problem }

/** What became of one request with entries. */
export type Sent =
  | { outcome: 'answered'; said: readonly Said[] }
  /** Nobody took it: no network, no server behind it, nobody signed in. Another time. */
  | { outcome: 'no-answer' }
  /** The server failed over what was sent; it may have been any of it. */
  | { outcome: 'fault'; said: string }

export interface OutboxParts {
  keep: OutboxKeep
  /** Sends entries in one request. */
  send(entries: readonly Entry[]): Promise<Sent>
  /** Runs where no other open page of this device runs its own, as far as the browser can see to that. */
  alone<T>(work: () => Promise<T>): Promise<T>
  /** This device's clock, ms since 1970. */
  now(): number
  /** Tells other open pages of this device that what is kept is other now. */
  tell(): void
}

/** What one go at sending came to. */
export interface Pass {
  /** Ids that the book has now. */
  taken: string[]
  /** Whether something is still to be sent, at another time. */
  isLeft: boolean
}

/** What is kept for this device, as this page last saw it. */
export interface OutboxView {
  /** Oldest first; those that arrived lately among them. */
  all: readonly Waiting[]
  /** Ids on their way just now. */
  sending: ReadonlySet<string>
  /** Ids that only this open page holds, since the device would not keep them. */
  onPage: ReadonlySet<string>
  /** What the device said when it would not keep something, the last time; null where it keeps everything. */
  trouble: string | null
}

export interface Outbox {
  view(): OutboxView
  subscribe(listener: () => void): () => void
  /** Looks again at what is kept: another page may have changed it. */
  look(): Promise<void>
  /** Keeps entries: resolves once they are on the device's disk, or with `page` where it refused and only the open page holds them. */
  add(items: readonly Written[]): Promise<'device' | 'page'>
  /** Sends what waits, oldest first, in batches; ends where nobody answers. */
  flush(): Promise<Pass>
  /** The person says the implausible values are right: their pointers go into `confirmed`, and it waits again. */
  confirm(id: string): Promise<void>
  /** The person wants it sent again as it is. */
  again(id: string): Promise<void>
  /** Taken out by the person; only what the book has refused. */
  drop(id: string): Promise<void>
}

/** So many entries go in one request. */
export const batchSize = 50
/** The server failed over so many single entries one after the other: it is not the entries. */
const faultsInARow = 3
/** So many of those that arrived stay in sight, for so long. */
const takenInSight = { most: 20, ms: 12 * 3_600_000 }

/**
 * The queue between this device and the book. An entry leaves only when the book has said that it has it, or when it was
 * refused and a person drops it. Sending twice is harmless: the id is the device's and the book takes it once; so whatever
 * is cut off between sending and answer, or between answer and note, is simply sent again.
 *
 * What the device will not keep (full, forbidden) this page holds as long as it is open, and offers to the device again each time it sends.
 */
export function openOutbox({ keep, send, alone, now, tell }: OutboxParts): Outbox {
  const held = new Map<string, Waiting>()
  const listeners = new Set<() => void>()
  let view: OutboxView = { all: [], sending: new Set(), onPage: new Set(), trouble: null }
  let looks = 0
  let seen = 0

  const show = (change: Partial<OutboxView>) => {
    view = { ...view, ...change }
    for (const listener of listeners) listener()
  }
  const failed = (error: unknown) => show({ trouble: error instanceof Error ? error.message : String(error) })

  /** All there is; what the device does not tell is what was last seen of it. */
  async function list(): Promise<Waiting[]> {
    const turn = ++looks
    const kept = await keep.list().catch((error: unknown) => {
      failed(error)
      return view.all.filter(({ entry }) => !held.has(entry.id))
    })
    const all = [...kept.filter(({ entry }) => !held.has(entry.id)), ...held.values()].toSorted(byId)
    // An earlier look that was answered later says nothing new.
    if (turn > seen) {
      seen = turn
      show({ all, onPage: new Set([...held.values()].filter(isOnDevice).map(({ entry }) => entry.id)) })
    }
    return all
  }
  async function changed() {
    await list()
    tell()
  }
  /** What the device will not note now is sent again another time, which changes nothing in the book. */
  async function note(id: string, make: (now: Waiting) => Waiting | null): Promise<void> {
    await change(id, make).catch(failed)
  }
  async function change(id: string, make: (now: Waiting) => Waiting | null): Promise<void> {
    const here = held.get(id)
    if (here !== undefined) {
      const next = make(here)
      if (next === null) held.delete(id)
      else held.set(id, next)
      return
    }
    await keep.change(id, make)
  }
  /** Offers the device what only this page holds. */
  async function settle(): Promise<void> {
    const items = [...held.values()].filter(isOnDevice)
    if (items.length === 0) return
    try {
      await keep.add(items)
      for (const { entry } of items) held.delete(entry.id)
      show({ trouble: null })
      await changed()
    } catch (error) {
      failed(error)
    }
  }

  async function pass(): Promise<Pass> {
    const taken: string[] = []
    const tried = new Set<string>()
    let faults = 0
    const queue: Waiting[][] = []
    for (;;) {
      const due = (await list()).filter((one) => isDue(one) && !tried.has(one.entry.id))
      const batch =
        queue.shift()?.filter(({ entry: { id } }) => due.some(({ entry }) => entry.id === id)) ?? nextBatch(due)
      if (batch.length === 0) {
        if (due.length === 0) break
        continue
      }
      show({ sending: new Set(batch.map(({ entry }) => entry.id)) })
      const sent = await send(batch.map(({ entry }) => entry)).finally(() => show({ sending: new Set() }))
      if (sent.outcome === 'no-answer') break
      if (sent.outcome === 'fault' && batch.length > 1) {
        queue.unshift(...halves(batch))
        continue
      }
      for (const { entry } of batch) tried.add(entry.id)
      if (sent.outcome === 'fault') {
        const { said } = sent
        await note(batch[0]!.entry.id, (one) => ({ ...one, fault: said }))
        faults += 1
        await changed()
        if (faults === faultsInARow) break
        continue
      }
      faults = 0
      for (const one of sent.said) {
        await note(one.id, (waiting) => heard(waiting, one, now()))
        if (one.outcome === 'taken') taken.push(one.id)
      }
      await changed()
    }
    await clearTaken()
    return { taken, isLeft: view.all.some(isDue) }
  }

  async function clearTaken(): Promise<void> {
    const arrived = view.all.filter((one) => !isOnDevice(one))
    const old = arrived.filter(
      ({ taken }, n) => n < arrived.length - takenInSight.most || Math.abs(now() - taken!.at) > takenInSight.ms,
    )
    if (old.length === 0) return
    for (const { entry } of old) await note(entry.id, (one) => (isOnDevice(one) ? one : null))
    await changed()
  }

  let running: Promise<Pass> | null = null
  let next: Promise<Pass> | null = null
  const run = () => {
    const started = settle().then(() => alone(pass))
    running = started
    void started
      .catch(() => {})
      .finally(() => {
        if (running === started) running = null
      })
    return started
  }

  return {
    view: () => view,
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    look: async () => void (await list()),
    async add(items) {
      const fresh = items.map(justWritten)
      try {
        await keep.add(fresh)
      } catch (error) {
        for (const one of fresh) held.set(one.entry.id, one)
        failed(error)
        await changed()
        return 'page'
      }
      await changed()
      return 'device'
    },
    flush() {
      if (running === null) return run()
      // What was written since the one that runs began is taken along by it or by the one after it: all who ask meanwhile share that.
      next ??= running
        .catch(() => {})
        .then(() => {
          next = null
          return run()
        })
      return next
    },
    async confirm(id) {
      await change(id, (one) => {
        if (one.problem === null) return one
        const pointers = (one.problem.errors ?? []).map(({ pointer }) => pointer)
        const confirmed = [...new Set([...(one.entry.confirmed ?? []), ...pointers])]
        return { ...one, entry: { ...one.entry, confirmed }, problem: null }
      })
      await changed()
    },
    async again(id) {
      await change(id, (one) => ({ ...one, problem: null, fault: null }))
      await changed()
    },
    async drop(id) {
      await change(id, (one) => (one.problem === null ? one : null))
      await changed()
    },
  }
}

const isDue = (one: Waiting): boolean => isOnDevice(one) && one.problem === null

/** The oldest that go together; what the server has failed over before goes by itself, after all others. */
function nextBatch(due: readonly Waiting[]): Waiting[] {
  const clean = due.filter(({ fault }) => fault === null)
  return clean.length > 0 ? clean.slice(0, batchSize) : due.slice(0, 1)
}

function halves(batch: readonly Waiting[]): Waiting[][] {
  const middle = Math.ceil(batch.length / 2)
  return [batch.slice(0, middle), batch.slice(middle)]
}

/** What a page hears late changes nothing of what another has heard already. */
function heard(waiting: Waiting, said: Said, at: number): Waiting {
  if (!isOnDevice(waiting)) return waiting
  if (said.outcome === 'taken') return { ...waiting, problem: null, fault: null, taken: { at, heldFor: said.heldFor } }
  return { ...waiting, problem: said.problem, fault: null }
}
