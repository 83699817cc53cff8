import { onTestFinished } from 'vitest'
import { type Book, openBook } from './book.ts'
import { inMemory, openSqliteStore } from './store/sqlite/open.ts'
import type { Store } from './store/store.ts'

/** A time that every test shares: Tuesday 3 March 2026, 10:00 UTC. */
export const testNow = new Date('2026-03-03T10:00:00.000Z')

/** An empty store in memory, closed with the test. */
export async function emptyStore(): Promise<Store> {
  const store = await openSqliteStore(inMemory)
  onTestFinished(() => store.close())
  return store
}

/** An empty book in memory, closed with the test. */
export const emptyBook = async (): Promise<Book> => openBook(await emptyStore(), () => testNow)

/** A book file of one small shop; `more` wins over its sections. */
export const smallShop = (more: Record<string, unknown> = {}) => ({
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric', currency: 'EUR', workDays: [1, 2, 3, 4, 5] },
  fluids: [
    {
      id: 'f1',
      name: 'Semi 1',
      class: 'semi-synthetic',
      brixFactor: 1.6,
      limits: { concentration: { low: 6, target: 8, high: 10 } },
    },
  ],
  waters: [
    { id: 'tap', name: 'Tap water', kind: 'tap', hardness: 260 },
    { id: 'di', name: 'Deionised water', kind: 'deionised', hardness: 5 },
  ],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
  ...more,
})

/** The nth entry id of a test. */
export const testId = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`

/** A reading of the small shop's sump; `more` wins. */
export const testReading = (n: number, more: Record<string, unknown> = {}) => ({
  id: testId(n),
  at: '2026-03-03T09:30:00+01:00',
  kind: 'reading',
  sump: 's1',
  brix: 5,
  volume: 180,
  ...more,
})
