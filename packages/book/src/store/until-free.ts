import { setTimeout as delay } from 'node:timers/promises'

/** Another process's write is waited for this long, without keeping anybody else of this process waiting. */
const patienceMs = 60_000
const pauseMs = 50

/** Tries again while another process has the book. Only a transaction that never began is tried again. */
export async function untilFree<T>(attempt: () => Promise<T>, isBusy: (error: unknown) => boolean): Promise<T> {
  for (let waited = 0; ; waited += pauseMs) {
    try {
      return await attempt()
    } catch (error) {
      if (!isBusy(error) || waited >= patienceMs) throw error
      await delay(pauseMs)
    }
  }
}
