import { useEffect, useState } from 'preact/hooks'
import { gotNoAnswer, reach, staysOffLine } from '../offline/reach.ts'
import { askForPromise } from '../offline/storage-promise.ts'
import { thisStore } from '../offline/this-store.ts'
import { aloneOnDevice } from './alone.ts'
import { waitAfter } from './back-off.ts'
import { clearFromLocalStorage, leftInLocalStorage } from './local-outbox.ts'
import { type OutboxView, openOutbox } from './outbox.ts'
import { deviceKeep } from './outbox-keep.ts'
import { sendEntries } from './send-entries.ts'
import { newId } from './uuid.ts'
import { isOnDevice, type Waiting, type Written } from './waiting.ts'

const pages = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('sumpbook.outbox')

/** This device's queue to the book. */
export const outbox = openOutbox({
  keep: deviceKeep(thisStore),
  send: sendEntries,
  alone: aloneOnDevice(thisStore, newId()),
  now: () => Date.now(),
  tell: () => pages?.postMessage('changed'),
})

/** Runs once the book has any of what was written. */
const whenTaken = new Set<() => Promise<void>>()
export const onTaken = (look: () => Promise<void>): void => void whenTaken.add(look)

/** What became of entries so far; `only-here`: neither device nor book has them, only this open page. */
export type Fate = 'taken' | 'held' | 'waiting' | 'only-here' | 'refused'

/** On a bad line one does not stand and wait: what waits goes on by itself. */
const patienceMs = 8_000

/** Keeps the entries here, sends them, and says what became of them so far. */
export async function write(items: readonly Written[]): Promise<Fate> {
  await keepHere(items)
  await sendSoon()
  return fateOf(items)
}

/** Keeps the entries here and sends them by and by; resolves as soon as they are kept. */
export async function keepHere(items: readonly Written[]): Promise<'device' | 'page'> {
  const kept = await outbox.add(items)
  if (kept === 'device') void askForPromise()
  return kept
}

export const sendSoon = (): Promise<unknown> =>
  Promise.race([flush(), new Promise((resolve) => setTimeout(resolve, patienceMs))])

function fateOf(items: readonly Written[]): Fate {
  const { all, onPage } = outbox.view()
  const mine = new Set(items.map(({ entry }) => entry.id))
  const found = all.filter(({ entry }) => mine.has(entry.id))
  if (found.some(({ problem }) => problem !== null)) return 'refused'
  if (found.some(({ entry, taken }) => taken === null && onPage.has(entry.id))) return 'only-here'
  if (found.some(isOnDevice)) return 'waiting'
  return found.some(({ taken }) => taken !== null && taken.heldFor !== null) ? 'held' : 'taken'
}

/** Whether any of them is held by this open page alone. */
export const isOnlyHere = (items: readonly Written[]): boolean => fateOf(items) === 'only-here'

/** Resolves once the book has all of them. */
export function whenInBook(items: readonly Written[]): Promise<void> {
  return new Promise((resolve) => {
    const look = () => {
      const fate = fateOf(items)
      if (fate !== 'taken' && fate !== 'held') return
      leave()
      resolve()
    }
    const leave = outbox.subscribe(look)
    look()
  })
}

let tries = 0
let timer = 0

function comeAgain(): void {
  tries += 1
  clearTimeout(timer)
  timer = setTimeout(() => void flush(), waitAfter(tries, Math.random()))
}

/** Sends what waits, and looks again at what is shown once the book has any of it. Comes again by itself while something is left. */
export async function flush(): Promise<void> {
  clearTimeout(timer)
  if (staysOffLine.now()) return
  try {
    await moveOver()
    const pass = await outbox.flush()
    const isOut = reach.now().state === 'out-of-reach'
    // With nothing to send, what is shown is asked for: that finds the book again.
    if (pass.taken.length > 0 || (isOut && !pass.isLeft)) for (const look of whenTaken) await look()
    if (pass.isLeft || reach.now().state === 'out-of-reach') comeAgain()
    else tries = 0
  } catch (error) {
    comeAgain()
    throw error
  }
}

/** What earlier versions kept elsewhere is kept here from now on; it leaves its old place only once it has its new one. */
async function moveOver(): Promise<void> {
  try {
    const left = leftInLocalStorage(localStorage)
    if (left.length === 0) return
    await deviceKeep(thisStore).add(left)
    clearFromLocalStorage(localStorage, left)
    await outbox.look()
  } catch {
    // Where storage refuses it stays where it is.
  }
}

/** Looks at what is kept, and sends when the app opens, when the network or the page comes back, and by and by. */
export function keepTrying(): void {
  const again = () => {
    tries = 0
    void flush()
  }
  pages?.addEventListener('message', () => void outbox.look())
  addEventListener('online', again)
  addEventListener('offline', () => gotNoAnswer(null))
  addEventListener('pageshow', ({ persisted }) => persisted && again())
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && again())
  staysOffLine.subscribe(again)
  reach.subscribe(() => {
    if (reach.now().state === 'out-of-reach' && tries === 0) comeAgain()
  })
  // What only the open page holds goes with it.
  addEventListener('beforeunload', (event) => outbox.view().onPage.size > 0 && event.preventDefault())
  void outbox.look().then(again)
}

/** The queue as it changes. */
export function useOutbox(): OutboxView {
  const [view, setView] = useState(outbox.view())
  useEffect(() => {
    setView(outbox.view())
    return outbox.subscribe(() => setView(outbox.view()))
  }, [])
  return view
}

/** What the book does not have yet, as it changes. */
export const useWaiting = (): readonly Waiting[] => useOutbox().all.filter(isOnDevice)
