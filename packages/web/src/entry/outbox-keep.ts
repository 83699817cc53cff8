import type { DeviceStore } from '../offline/device-store.ts'
import type { Waiting } from './waiting.ts'

/** Where entries are kept on the device. Each call is one transaction: on the disk once it resolves, and nothing of it where it rejects. */
export interface OutboxKeep {
  list(): Promise<Waiting[]>
  /** Keeps them; one whose id is there already is left as it is there. */
  add(items: readonly Waiting[]): Promise<void>
  /** Makes another of one as it is there now; `null` takes it out. Nothing happens where it is not there. */
  change(id: string, make: (now: Waiting) => Waiting | null): Promise<void>
}

/** In IndexedDB; written through to the disk before it is called kept. */
export function deviceKeep(store: DeviceStore): OutboxKeep {
  const add = (items: readonly Waiting[]) =>
    store.use(async (database) => {
      const transaction = database.transaction('outbox', 'readwrite', { durability: 'strict' })
      const there = new Set(await transaction.store.getAllKeys())
      const fresh = items.filter(({ entry }) => !there.has(entry.id))
      await Promise.all([...fresh.map((item) => transaction.store.add(item)), transaction.done])
    })
  return {
    list: () => store.use((database) => database.getAll('outbox')),
    add: (items) =>
      add(items).catch(async (error: unknown) => {
        if (!(error instanceof DOMException) || error.name !== 'QuotaExceededError') throw error
        // What was written comes before what was only read and can be asked for again.
        await store.use((database) => database.clear('answers'))
        await add(items)
      }),
    change: (id, make) =>
      store.use(async (database) => {
        const transaction = database.transaction('outbox', 'readwrite', { durability: 'strict' })
        const now = await transaction.store.get(id)
        const next = now === undefined ? undefined : make(now)
        if (next === null) await transaction.store.delete(id)
        else if (next !== undefined) await transaction.store.put(next)
        await transaction.done
      }),
  }
}
