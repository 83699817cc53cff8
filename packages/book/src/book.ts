import { setImmediate as nextTurn } from 'node:timers/promises'
import type { BookParts, TodayReader } from './book-parts.ts'
import type { EstimateDocument, Outlook } from './estimate/answer-types.ts'
import { checkpoints } from './estimate/checkpoints.ts'
import { enginePrint } from './estimate/engine-print.ts'
import { shopEstimator } from './estimate/estimator.ts'
import { readOutlook } from './estimate/outlook.ts'
import { type OtherWaterQuestion, type PlanQuestion, readOtherWater, readPlan } from './estimate/plan.ts'
import { type EstimateOptions, readEstimate } from './estimate/read-estimate.ts'
import { exportBook } from './export/export-book.ts'
import type { ImportOptions } from './import/import-file.ts'
import { importInWorker } from './import/import-in-worker.ts'
import { isExample, loadExample } from './import/load-example.ts'
import type { SheetSource } from './import/sheet/sheet-source.ts'
import type { ImportReport } from './import/sheet-types.ts'
import { type Arrival, type ArrivalNote, clockToleranceMs, noNote, orThrow, putEntries } from './journal/put.ts'
import { keptThings } from './setup/thing-cache.ts'
import type { ThingHistory, Things } from './setup/things.ts'
import type { Store } from './store/store.ts'
import { inWalkingOrder } from './today/condition.ts'
import { readSumps } from './today/read-sumps.ts'
import { readToday } from './today/read-today.ts'
import type { SumpItem, Today } from './today/today.ts'

/** One shop's book: everything the server, the command line and scripts do with it. */
export interface Book {
  readonly store: Store
  /** The things of the shop and how they came to be what they are. */
  things(): Promise<ThingHistory>
  /** The things of the shop as they are now. */
  present(): Promise<Things>
  /**
   * Takes one entry, exactly once.
   *
   * @throws {BookError} `refused-input`, `other-entry-under-id`
   */
  put(entry: unknown): Promise<Arrival>
  /** Takes many entries, each judged by itself, all that pass in one durable write; `notes` say how each of them came. */
  putMany(entries: readonly unknown[], notes?: readonly ArrivalNote[]): Promise<Arrival[]>
  /**
   * A book file, a CSV or a workbook, all or nothing.
   *
   * @throws {BookError} `refused-input` with every fault and open question; nothing was written
   */
  importFile(source: SheetSource, options?: ImportOptions): Promise<ImportReport>
  /** The example shop into an empty book; `bookFile` makes it, up to the instant given. */
  loadExample(bookFile: (until: string) => string): Promise<ImportReport>
  isExample(): Promise<boolean>
  /** The book as a book file, piece by piece. */
  export(): AsyncGenerator<string>
  /**
   * Where every sump stands, how sure that is, and where it goes.
   *
   * @throws {BookError} `refused-input`, `not-found`
   */
  estimate(options?: EstimateOptions): Promise<EstimateDocument>
  /** Keeps in the store how far the estimate has come, so that the next program need not begin with the first day. */
  settle(): Promise<void>
  /** Where a sump goes if it is topped up with one water and one strength from now on. */
  plan(sump: string, options?: Partial<PlanQuestion>): ReturnType<typeof readPlan>
  /** What another water would have made of its minerals. */
  otherWater(sump: string, question: Omit<OtherWaterQuestion, 'at'> & { at?: Date }): ReturnType<typeof readOtherWater>
  /**
   * One sump's past, now and future, for drawing.
   *
   * @throws {BookError} `not-found`
   */
  outlook(sump: string, options?: { at?: Date; daysBack?: number; reader?: TodayReader }): Promise<Outlook>
  /** @param options `person`: who asks; what others have claimed is no news to them */
  today(options?: { at?: Date; reader?: TodayReader; person?: string | null }): Promise<Today>
  /** What else is worked out from the records (stock, waste, costs …): each such reading lives in a folder of its own. */
  ask<Answer>(read: (parts: BookParts, now: Date) => Promise<Answer>): Promise<Answer>
  /**
   * Every sump as it stands now, in walking order, or one alone.
   *
   * @throws {BookError} `not-found`
   */
  sumps(options?: { sump?: string; reader?: TodayReader }): Promise<SumpItem[]>
  close(): Promise<void>
}

/** @param clock what time it is; nothing in the book asks the machine */
export function openBook(store: Store, clock: () => Date): Book {
  const things = () => keptThings(store)
  const estimates = checkpoints({ store, things, estimator: shopEstimator, print: enginePrint })
  const putMany = putTogether(async (entries, notes) => putEntries(store, entries, clock(), await things(), notes))
  const parts = { journal: store, checkpoints: estimates, things }
  return {
    store,
    things,
    present: async () => (await things()).at(clock().toISOString()),
    put: async (entry) => orThrow((await putMany([entry]))[0]!),
    putMany,
    importFile: (source, options) => importInWorker(store, source, clock(), options),
    loadExample: (bookFile) => loadExample(store, bookFile, clock()),
    isExample: () => isExample(store),
    export: () => exportBook(store),
    estimate: (options = {}) => readEstimate(estimates, clock(), options),
    settle: () => estimates.settle(clock().getTime()),
    outlook: (sump, options = {}) => readOutlook(parts, { sump, at: clock(), ...options }),
    plan: (sump, options = {}) => readPlan(parts, sump, { at: clock(), ...options }),
    otherWater: (sump, question) => readOtherWater(parts, sump, { at: clock(), ...question }),
    today: ({ at, reader = {}, person = null } = {}) => readToday(parts, { ...timesOf(at, clock()), reader, person }),
    ask: (read) => read(parts, clock()),
    sumps: async (options = {}) => {
      const { items } = await readSumps(parts, { ...timesOf(undefined, clock()), ...options })
      return items.sort(inWalkingOrder)
    },
    close: () => store.close(),
  }
}

/** Now, what a phone whose clock runs a little ahead has just written counts; at a time asked for, nothing after it does. */
const timesOf = (asked: Date | undefined, now: Date) =>
  asked === undefined ? { at: now, until: new Date(now.getTime() + clockToleranceMs) } : { at: asked }

type PutMany = (entries: readonly unknown[], notes?: readonly ArrivalNote[]) => Promise<Arrival[]>

/**
 * Entries that come while a write is on its way share the next one: one durable write serves all who wait, each is
 * answered only after its own is on the disk.
 */
function putTogether(write: PutMany): PutMany {
  let waiting: {
    entries: readonly unknown[]
    notes: readonly ArrivalNote[]
    settle: PromiseWithResolvers<Arrival[]>
  }[] = []
  let writing = false
  const writeNext = async () => {
    writing = true
    while (waiting.length > 0) {
      // The store works without yielding: what the network has already brought gets its turn to join first.
      await nextTurn()
      const together = waiting
      waiting = []
      try {
        const arrivals = await write(
          together.flatMap(({ entries }) => entries),
          together.flatMap(({ entries, notes }) => entries.map((_, n) => notes[n] ?? noNote)),
        )
        let from = 0
        for (const { entries, settle } of together) {
          settle.resolve(arrivals.slice(from, from + entries.length))
          from += entries.length
        }
      } catch (error) {
        for (const { settle } of together) settle.reject(error)
      }
    }
    writing = false
  }
  return (entries, notes = []) => {
    const settle = Promise.withResolvers<Arrival[]>()
    waiting.push({ entries, notes, settle })
    if (!writing) void writeNext()
    return settle.promise
  }
}
