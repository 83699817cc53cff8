import type { DeviceStore } from '../offline/device-store.ts'

const name = 'sumpbook.send'
/** Longer than one request takes; a page that was put to sleep while it held it loses it then. */
const leaseMs = 45_000
const lookAgainMs = 1_000

/**
 * One open page of this device sends at a time: by the browser's locks, where the page has them (https), else by a lease in
 * the device's store. It spares work and is no safeguard: two that send the same do no harm, so nobody waits for ever.
 */
export function aloneOnDevice(store: DeviceStore, page: string): <T>(work: () => Promise<T>) => Promise<T> {
  return async (work) => {
    if (navigator.locks !== undefined) return underLock(work)
    return underLease(store, page, work)
  }
}

async function underLock<T>(work: () => Promise<T>): Promise<T> {
  let begun = false
  try {
    return await navigator.locks.request(name, { signal: AbortSignal.timeout(leaseMs) }, () => {
      begun = true
      return work()
    })
  } catch (error) {
    // Waited too long for a page that sleeps.
    if (begun) throw error
    return work()
  }
}

async function underLease<T>(store: DeviceStore, page: string, work: () => Promise<T>): Promise<T> {
  const givenUpAt = Date.now() + leaseMs
  while (Date.now() < givenUpAt && !(await takeLease(store, page, Date.now()).catch(() => true))) {
    await new Promise((resolve) => setTimeout(resolve, lookAgainMs))
  }
  try {
    return await work()
  } finally {
    await dropLease(store, page).catch(() => {})
  }
}

/** @returns whether this page has it; a store that does not work keeps nobody from sending */
export function takeLease(store: DeviceStore, page: string, now: number): Promise<boolean> {
  return store.use(async (database) => {
    const transaction = database.transaction('leases', 'readwrite')
    const lease = await transaction.store.get(name)
    // One that ends further ahead than any can was made by a clock that has been set back since.
    const isFree = lease === undefined || lease.page === page || lease.until < now || lease.until > now + leaseMs
    if (isFree) await transaction.store.put({ page, until: now + leaseMs }, name)
    await transaction.done
    return isFree
  })
}

export function dropLease(store: DeviceStore, page: string): Promise<void> {
  return store.use(async (database) => {
    const transaction = database.transaction('leases', 'readwrite')
    const lease = await transaction.store.get(name)
    if (lease?.page === page) await transaction.store.delete(name)
    await transaction.done
  })
}
