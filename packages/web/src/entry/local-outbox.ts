import { justWritten, type Waiting } from './waiting.ts'

/** The part of `Storage` that is used. */
export type LocalStorage = Pick<Storage, 'getItem' | 'removeItem' | 'key' | 'length'>

const prefix = 'sumpbook.outbox.'

/** What waits where earlier versions kept the queue (an older page may still be open and write there). What cannot be read stays there. */
export function leftInLocalStorage(storage: LocalStorage): Waiting[] {
  const found: Waiting[] = []
  for (let i = 0; i < storage.length; i++) {
    const key = storage.key(i)
    const waiting = key?.startsWith(prefix) === true ? read(storage.getItem(key)) : null
    if (waiting !== null) found.push(waiting)
  }
  return found
}

/** Taken out once they are kept elsewhere. */
export function clearFromLocalStorage(storage: LocalStorage, moved: readonly Waiting[]): void {
  for (const { entry } of moved) storage.removeItem(prefix + entry.id)
}

function read(text: string | null): Waiting | null {
  try {
    const { entry, label, problem } = JSON.parse(text ?? '') as Waiting
    if (typeof entry.id !== 'string') return null
    return { ...justWritten({ entry, label }), problem: problem ?? null }
  } catch {
    return null
  }
}
