import { monitorEventLoopDelay } from 'node:perf_hooks'
import { type Book, openBook } from '../packages/book/src/book.ts'
import { inMemory, openSqliteStore } from '../packages/book/src/store/sqlite/open.ts'
import { simulateShop } from './estimate/simulate/shop.ts'
import { digits, median } from './machine.ts'

/** Today of a shop of 500 sumps after half a year: the first time after a start, then warm; and how long nobody else got a turn. */
export async function benchToday() {
  const shop = simulateShop({ seed: 1, shop: 1, sumps: 500 })
  const now = new Date(shop.instant(181, 20))
  const store = await openSqliteStore(inMemory)
  const text = new TextEncoder().encode(JSON.stringify(shop.book))
  const book = openBook(store, () => now)
  await book.importFile({
    name: 'shop.json',
    async *open() {
      yield text
    },
  })
  const cold = await timed(openBook(store, () => now))
  const warm: number[] = []
  await book.today()
  for (let i = 0; i < 7; i++) warm.push((await timed(book)).ms)
  await store.close()
  return {
    sumps: 500,
    entries: shop.book.entries.length,
    coldSeconds: digits(cold.ms / 1000),
    longestBlockMs: digits(cold.blockMs),
    warmMs: digits(median(warm)),
    limitWarmMs: 1000,
  }
}

async function timed(book: Book): Promise<{ ms: number; blockMs: number }> {
  const delay = monitorEventLoopDelay({ resolution: 5 })
  delay.enable()
  const start = performance.now()
  await book.today()
  const ms = performance.now() - start
  await new Promise((resolve) => setTimeout(resolve, 20))
  delay.disable()
  return { ms, blockMs: delay.max / 1e6 }
}
