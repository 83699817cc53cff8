import { say } from '@sumpbook/fluid'
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { Waiting } from '../entry/waiting.ts'

/** An answer of the book as it last came, kept for whom it was given to. */
export interface KeptAnswer {
  who: string
  /** The question, as the cache of answers names it. */
  question: readonly unknown[]
  answer: unknown
  /** This device's clock, ms since 1970. */
  at: number
}

/** Which open page sends for this device, until when by its clock. */
export interface Lease {
  page: string
  until: number
}

export interface DeviceTables extends DBSchema {
  outbox: { key: string; value: Waiting }
  answers: { key: string; value: KeptAnswer; indexes: { who: string } }
  leases: { key: string; value: Lease }
}

export type DeviceDatabase = IDBPDatabase<DeviceTables>

/** What this device keeps. */
export interface DeviceStore {
  /** Opens it where it is not open, and once more where the browser has closed it meanwhile. @throws DOMException where the browser refuses */
  use<T>(work: (database: DeviceDatabase) => Promise<T>): Promise<T>
}

/** A browser that is asked in vain for so long keeps nothing (some hang in place of refusing). */
const patienceMs = 4_000

/** The device's own store, IndexedDB of this address. */
export function openDeviceStore(name = 'sumpbook'): DeviceStore {
  let opening: Promise<DeviceDatabase> | null = null
  const open = () => {
    if (typeof indexedDB === 'undefined') {
      return Promise.reject(new DOMException(say('This browser has no storage for pages.'), 'NotSupportedError'))
    }
    const fresh = withPatience(
      openDB<DeviceTables>(name, 1, {
        upgrade(database) {
          database.createObjectStore('outbox', { keyPath: 'entry.id' })
          database.createObjectStore('answers').createIndex('who', 'who')
          database.createObjectStore('leases')
        },
        // A newer version of the app waits to change the tables: this page makes way, and opens again when it needs to.
        blocking: () => forget(fresh),
        terminated: () => forget(fresh),
      }),
    )
    fresh.catch(() => {
      if (opening === fresh) opening = null
    })
    return fresh
  }
  const forget = (old: Promise<DeviceDatabase>) => {
    if (opening === old) opening = null
    void old.then((database) => database.close())
  }
  return {
    async use(work) {
      opening ??= open()
      const used = opening
      try {
        return await work(await used)
      } catch (error) {
        // The connection was lost under it (a phone that slept): the work had no effect and is done anew.
        if (!(error instanceof DOMException) || error.name !== 'InvalidStateError') throw error
        forget(used)
        opening ??= open()
        return work(await opening)
      }
    },
  }
}

function withPatience<T>(promise: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(
      () => reject(new DOMException(say('This browser does not open its storage.'), 'TimeoutError')),
      patienceMs,
    )
  })
  return Promise.race([promise, late]).finally(() => clearTimeout(timer))
}
