import { openStore, type StorePlace, verifyStore } from '@sumpbook/book'
import type { Sent } from './load.ts'

/** What became of the entries of a load. */
export interface Fate {
  entries: number
  /** Acknowledged and not in the book. */
  lost: string[]
  /** In the book more than once. */
  doubled: string[]
  /** What `verify` found. */
  faults: string[]
}

/** Opens a book by itself and compares it with what was acknowledged. */
export async function checkBook(place: StorePlace, { acknowledged }: Sent): Promise<Fate> {
  const store = await openStore(place, { mustExist: true })
  try {
    const { faults, entries } = await verifyStore(store)
    const seen = new Map<string, number>()
    for (let after = 0; ; after += 5000) {
      const rows = await store.rows(after, 5000)
      for (const { id } of rows) seen.set(id, (seen.get(id) ?? 0) + 1)
      if (rows.length < 5000) break
    }
    return {
      entries,
      lost: [...acknowledged].filter((id) => !seen.has(id)),
      doubled: [...seen].filter(([, times]) => times > 1).map(([id]) => id),
      faults: faults.map(({ seq, fault }) => `${seq}: ${fault}`),
    }
  } finally {
    await store.close()
  }
}
