// `node bench/today-year.ts`: more than a year of the example shop asked for its list again and again; how much was new in a shift.

import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads'
import type { BookDocument } from '../demo/src/index.ts'
import { simulateShop } from '../demo/src/simulate-shop.ts'
import { type Book, openBook } from '../packages/book/src/book.ts'
import { inMemory, openSqliteStore } from '../packages/book/src/store/sqlite/open.ts'
import { keepFigures } from './record/keep-figures.ts'

const hourMs = 3_600_000
const dayMs = 24 * hourMs

/** Hours in Greenwich: right after the shift begins (at 6:00 in Berlin, summer and winter), in the morning, after noon, and in the evening. */
const shiftHours = [5.2, 9, 13, 18]

/** What a shop's list came to, shift by shift. */
export interface ShiftCount {
  /** RFC 3339. */
  began: string
  /** Times at which the list was asked for. */
  asked: number
  /** Sumps and duties that ever stood on it as new and were not exempt. */
  fresh: number
  /** The most that stood on it as new at once. */
  atOnce: number
  exempt: number
  later: number
}

/** The example shop in a book of its own, with all that was written in it up to an instant. */
export async function exampleBook(
  until: string,
): Promise<{ book: Book; document: BookDocument; first: number; last: number; close(): Promise<void> }> {
  const { book: document } = simulateShop({ until })
  const store = await openSqliteStore(inMemory)
  const book = openBook(store, () => new Date(until))
  const text = new TextEncoder().encode(JSON.stringify(document))
  await book.importFile({
    name: 'shop.json',
    async *open() {
      yield text
    },
  })
  const times = document.entries.map(({ at }) => Date.parse(at))
  return {
    book,
    document,
    first: Math.floor(Math.min(...times) / dayMs) * dayMs,
    last: Date.parse(until),
    close: () => store.close(),
  }
}

/**
 * Asks a book for its list at some hours of the days chosen, and counts by shift.
 *
 * @param takes whether a day is looked at, by its number from the first
 * @param hours of a day in Greenwich
 */
export async function countShifts(
  book: Book,
  {
    first,
    last,
    takes,
    hours,
  }: { first: number; last: number; takes: (day: number) => boolean; hours: readonly number[] },
): Promise<ShiftCount[]> {
  const shifts = new Map<string, ShiftCount & { seen: Set<string>; seenExempt: Set<string> }>()
  const days = Math.floor((last - first) / dayMs)
  for (let day = 0; day <= days; day++) {
    if (!takes(day)) continue
    for (const hour of hours) {
      const ms = first + day * dayMs + hour * hourMs
      if (ms > last) break
      const { shift, items, due, later } = await book.today({ at: new Date(ms) })
      const count = shifts.get(shift.began) ?? {
        ...{ began: shift.began, asked: 0, fresh: 0, atOnce: 0, exempt: 0, later: 0 },
        ...{ seen: new Set<string>(), seenExempt: new Set<string>() },
      }
      shifts.set(shift.began, count)
      const lines = [...items.map((one) => ({ ...one, id: one.sump })), ...due.map((one) => ({ ...one, id: one.key }))]
      const fresh = lines.filter(({ isNew, exempt }) => isNew && !exempt)
      for (const { id } of fresh) count.seen.add(id)
      for (const { id, exempt } of lines) if (exempt) count.seenExempt.add(id)
      count.asked += 1
      count.fresh = count.seen.size
      count.atOnce = Math.max(count.atOnce, fresh.length)
      count.exempt = count.seenExempt.size
      count.later = Math.max(count.later, (later?.items.length ?? 0) + (later?.due.length ?? 0))
    }
  }
  return [...shifts.values()].map(({ seen: _, seenExempt: __, ...count }) => count)
}

const until = '2026-11-28T10:00:00+01:00'
/** The year is asked by so many threads, each its own stretch of days. */
const threads = 4

/** One thread's stretch; no shift of these hours reaches into another day. */
async function countStretch(stretch: number): Promise<{ days: number; shifts: ShiftCount[] }> {
  const { book, first, last, close } = await exampleBook(until)
  const days = Math.floor((last - first) / dayMs) + 1
  const takes = (day: number) => Math.floor((day * threads) / days) === stretch
  const shifts = await countShifts(book, { first, last, takes, hours: shiftHours })
  await close()
  return { days, shifts }
}

const countInThread = (stretch: number): Promise<{ days: number; shifts: ShiftCount[] }> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: { stretch } })
    worker.once('message', resolve).once('error', reject)
  })

if (!isMainThread && typeof workerData?.stretch === 'number') {
  parentPort?.postMessage(await countStretch(workerData.stretch))
} else if (import.meta.main) {
  const counts = await Promise.all(Array.from({ length: threads }, (_, stretch) => countInThread(stretch)))
  const shifts = counts.flatMap((count) => count.shifts)
  const fresh = shifts.map((one) => one.fresh).sort((a, b) => a - b)
  const most = fresh.at(-1)!
  keepFigures(
    'new things on the list a shift',
    {
      days: counts[0]!.days,
      shifts: shifts.length,
      asked: shifts.reduce((sum, { asked }) => sum + asked, 0),
      mean: Number((fresh.reduce((sum, n) => sum + n, 0) / fresh.length).toFixed(2)),
      median: fresh[Math.floor(fresh.length / 2)],
      most,
      limit: 6,
      shiftsAtLimit: fresh.filter((n) => n === 6).length,
      shiftsWithLater: shifts.filter(({ later }) => later > 0).length,
      mostLater: Math.max(...shifts.map(({ later }) => later)),
    },
    most <= 6,
  )
}
