import { Worker } from 'node:worker_threads'
import { type Speech, speech } from '@sumpbook/fluid'
import { BookError, type ErrorCode, type Fault } from '../errors.ts'
import type { StorePlace } from '../store/place.ts'
import type { Store } from '../store/store.ts'
import { type ImportOptions, importFile } from './import-file.ts'
import type { SheetSource } from './sheet/sheet-source.ts'
import type { ImportReport } from './sheet-types.ts'

/** What a worker thread is given. */
export interface ImportOrder {
  place: StorePlace
  source: { name: string; path: string } | { name: string; bytes: Uint8Array }
  options: ImportOptions
  now: string
  /** How whoever imports reads: faults and questions come said. */
  speech: Speech
}

/** What it answers: the report, the book's refusal, or what nobody foresaw. */
export type ImportAnswer =
  | { report: ImportReport }
  | { refusal: { code: ErrorCode; message: string; faults: readonly Fault[] } }
  | { failure: string }

/** Short-lived rows by the hundred thousand: a small nursery is emptied often and keeps the process small. */
const resourceLimits = { maxYoungGenerationSizeMb: 16 }

/**
 * Takes a file into a book in a thread of its own, so that whoever else uses the book goes on reading; writers wait. A book
 * in memory takes it in here.
 *
 * @throws {BookError} as {@link importFile}
 */
export async function importInWorker(
  store: Store,
  source: SheetSource,
  now: Date,
  options: ImportOptions = {},
): Promise<ImportReport> {
  const { place } = store
  if (place.kind === 'memory') return importFile(store, source, now, options)
  const order: ImportOrder = {
    place,
    source: await portable(source),
    options,
    now: now.toISOString(),
    speech: speech(),
  }
  const answer = await store.hold(() => askWorker(order))
  if ('report' in answer) return answer.report
  if ('failure' in answer) throw new Error(answer.failure)
  throw new BookError(answer.refusal.code, answer.refusal.message, answer.refusal.faults)
}

async function portable(source: SheetSource): Promise<ImportOrder['source']> {
  const { name, path } = source
  if (path !== undefined) return { name, path }
  const chunks: Uint8Array[] = []
  for await (const chunk of source.open()) chunks.push(chunk)
  return { name, bytes: Buffer.concat(chunks) }
}

function askWorker(workerData: ImportOrder): Promise<ImportAnswer> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./import-worker.ts', import.meta.url), { workerData, resourceLimits })
    worker.once('message', resolve)
    worker.once('error', reject)
    worker.once('exit', () => reject(new Error('the import ended without an answer')))
  })
}
