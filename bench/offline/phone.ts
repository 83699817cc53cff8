import type { OutboxKeep } from '../../packages/web/src/entry/outbox-keep.ts'
import type { Waiting } from '../../packages/web/src/entry/waiting.ts'
import type { Chance } from '../estimate/simulate/random.ts'
import type { VirtualTime } from './virtual-time.ts'

/** An open page of the app; killed, nothing of it ever goes on. */
export class Page {
  isDead = false
  #cleanUps: (() => void)[] = []

  /** What the page waits for; a page that was killed waits for ever. */
  awaits<T>(promise: Promise<T>): Promise<T> {
    return new Promise((resolve, reject) => {
      promise.then(
        (value) => this.isDead || resolve(value),
        (error: unknown) => this.isDead || reject(error),
      )
    })
  }
  atDeath(cleanUp: () => void): void {
    this.#cleanUps.push(cleanUp)
  }
  kill(): void {
    if (this.isDead) return
    this.isDead = true
    for (const cleanUp of this.#cleanUps) cleanUp()
  }
}

/** A phone's store as browsers promise it: transactions one after the other, each whole or not at all, on the disk once they are called done. */
export interface Disk {
  kept: Map<string, Waiting>
  /** While it is full nothing new is kept. */
  isFull: boolean
  of(page: Page): OutboxKeep
}

/** @param watch sees every entry as it is after each change; null where it was taken out */
export function diskOf(
  time: VirtualTime,
  chance: Chance,
  watch: (id: string, before: Waiting, after: Waiting | null) => void,
): Disk {
  const kept = new Map<string, Waiting>()
  let freeAt = 0
  /** Of a page that is killed meanwhile, a transaction that was asked for may still reach the disk; nobody hears of it. */
  const transaction = <T>(page: Page, work: () => T): Promise<T> =>
    new Promise((resolve, reject) => {
      freeAt = Math.max(freeAt, time.now()) + chance.between(1, 30)
      time.after(freeAt - time.now(), () => {
        if (page.isDead && chance.happens(0.5)) return
        try {
          const value = work()
          if (!page.isDead) resolve(value)
        } catch (error) {
          if (!page.isDead) reject(error)
        }
      })
    })
  const disk: Disk = {
    kept,
    isFull: false,
    of: (page) => ({
      list: () => transaction(page, () => [...kept.values()].map((one) => structuredClone(one))),
      add: (items) =>
        transaction(page, () => {
          if (disk.isFull) throw new DOMException('There is no room.', 'QuotaExceededError')
          for (const one of items) if (!kept.has(one.entry.id)) kept.set(one.entry.id, structuredClone(one))
        }),
      change: (id, make) =>
        transaction(page, () => {
          const before = kept.get(id)
          if (before === undefined) return
          const after = make(structuredClone(before))
          if (after === null) kept.delete(id)
          else kept.set(id, after)
          watch(id, before, after)
        }),
    }),
  }
  return disk
}

/** Who sends alone on this phone: by the browser's locks, or by nothing at all, as where a lease has run out under a page that sleeps. */
export function aloneOf(isLocked: boolean) {
  let last: Promise<void> = Promise.resolve()
  return (page: Page) =>
    async <T>(work: () => Promise<T>): Promise<T> => {
      if (!isLocked) return work()
      const before = last
      let release = () => {}
      last = new Promise((resolve) => {
        release = resolve
      })
      // The browser takes the lock of a page that ends, also while that one still waits for its turn.
      page.atDeath(() => void before.then(release))
      await page.awaits(before)
      return work().finally(release)
    }
}
