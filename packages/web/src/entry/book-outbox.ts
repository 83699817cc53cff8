import { useEffect, useState } from 'preact/hooks'
import { OutOfReach, putEntry, Refusal } from '../api/client.ts'
import { refresh } from '../api/queries.ts'
import type { Entry } from '../api/types.ts'
import { type Keep, openOutbox, type Sent, type Waiting } from './outbox.ts'

/** This device's queue to the book. */
export const outbox = openOutbox(storage(), send)

/** Keeps the entries here, sends them, and looks again at what is shown once the book has any of them. */
export async function write(
  items: readonly { entry: Entry; label: string }[],
): Promise<'taken' | 'waiting' | 'refused'> {
  outbox.add(items)
  await flush()
  const mine = new Set(items.map(({ entry }) => entry.id))
  const left = outbox.list().filter(({ entry }) => mine.has(entry.id))
  if (left.some(({ problem }) => problem !== null)) return 'refused'
  return left.length > 0 ? 'waiting' : 'taken'
}

export async function flush(): Promise<void> {
  const taken = await outbox.flush()
  if (taken.length > 0) await refresh()
}

/** What waits, as it changes. */
export function useWaiting(): readonly Waiting[] {
  const [list, setList] = useState(outbox.list())
  useEffect(() => {
    setList(outbox.list())
    return outbox.subscribe(() => setList(outbox.list()))
  }, [])
  return list
}

/** Tries again when the network or the page comes back, and now and then: some browsers never tell. */
export function keepTrying(): void {
  const again = () => {
    if (outbox.list().some(({ problem }) => problem === null)) void flush()
  }
  addEventListener('online', again)
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && again())
  setInterval(again, 15_000)
  again()
}

async function send(entry: Entry): Promise<Sent> {
  try {
    await putEntry(entry)
    return { outcome: 'taken' }
  } catch (error) {
    // Nobody is signed in just now: what was written waits for who will be.
    if (error instanceof Refusal && error.status === 401) return { outcome: 'no-answer' }
    if (error instanceof Refusal) return { outcome: 'refused', problem: error.problem }
    if (error instanceof OutOfReach) return { outcome: 'no-answer' }
    throw error
  }
}

function storage(): Keep {
  try {
    return localStorage
  } catch {
    const forbidden = () => {
      throw new DOMException('Storage is forbidden here.', 'SecurityError')
    }
    return { getItem: () => null, setItem: forbidden, removeItem: () => {}, key: () => null, length: 0 }
  }
}
