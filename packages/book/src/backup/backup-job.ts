import { mkdtemp, rm, stat } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Worker } from 'node:worker_threads'
import { BookError, type ErrorCode, type Fault } from '../errors.ts'
import type { StorePlace } from '../store/place.ts'
import type { Store } from '../store/store.ts'
import { type BackupReport, backUp } from './back-up.ts'
import { type DrillReport, restoreDrill } from './drill.ts'
import { noteBackup, noteDrill } from './last-backup.ts'

/** What a worker thread is given. */
export interface BackupOrder {
  place: StorePlace
  file: string
  /** Their folder; none without. */
  attachments: string | undefined
  drill: boolean
}

/** A backup, and what trying it showed where that was asked for. */
export interface BackupDone {
  backup: BackupReport
  drill: DrillReport | null
}

/** What the thread answers: what was done, the book's refusal, or what nobody foresaw. */
export type BackupAnswer =
  | { done: BackupDone }
  | { refusal: { code: ErrorCode; message: string; faults: readonly Fault[] } }
  | { failure: string }

/** A backup in a folder of its own, until it was fetched. */
export interface FreshBackup {
  file: string
  bytes: number
  report: BackupReport
  /** Takes it away again. */
  clear(): Promise<void>
}

/** Writes a fresh backup in a thread of its own, so that whoever else uses the book goes on. */
export async function freshBackup(
  store: Store,
  attachments: string | undefined,
  now: () => Date,
): Promise<FreshBackup> {
  const folder = await mkdtemp(join(tmpdir(), 'sumpbook-backup-'))
  const clear = () => rm(folder, { recursive: true, force: true })
  try {
    const { backup } = await inWorker(store, { file: join(folder, 'backup'), attachments, drill: false })
    const { size } = await stat(backup.file)
    await noteBackup(store, { report: backup, bytes: size, at: now() })
    return { file: backup.file, bytes: size, report: backup, clear }
  } catch (error) {
    await clear()
    throw error
  }
}

/** Makes a backup, restores it, compares, and takes all of it away, in a thread of its own. */
export async function backupDrill(
  store: Store,
  attachments: string | undefined,
  now: () => Date,
): Promise<DrillReport> {
  const folder = await mkdtemp(join(tmpdir(), 'sumpbook-backup-'))
  const note = (error: string | null, seconds: number | null) => noteDrill(store, { at: now(), error, seconds })
  try {
    const { drill } = await inWorker(store, { file: join(folder, 'backup'), attachments, drill: true })
    await note(null, drill!.seconds)
    return drill!
  } catch (error) {
    if (error instanceof BookError) await note(error.message, null)
    throw error
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

async function inWorker(store: Store, order: Omit<BackupOrder, 'place'>): Promise<BackupDone> {
  const { place } = store
  // A book in memory is this thread's own.
  if (place.kind === 'memory') return doBackup(store, { place, ...order })
  const answer = await askWorker({ place, ...order })
  if ('done' in answer) return answer.done
  if ('failure' in answer) throw new Error(answer.failure)
  throw new BookError(answer.refusal.code, answer.refusal.message, answer.refusal.faults)
}

/** What the order asks for, here. */
export async function doBackup(store: Store, { file, attachments, drill }: BackupOrder): Promise<BackupDone> {
  const backup = await store.snapshot((journal) =>
    backUp(journal, file, attachments === undefined ? {} : { attachments }),
  )
  return { backup, drill: drill ? await restoreDrill(file, store) : null }
}

function askWorker(workerData: BackupOrder): Promise<BackupAnswer> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./backup-worker.ts', import.meta.url), { workerData })
    worker.once('message', resolve)
    worker.once('error', reject)
    worker.once('exit', () => reject(new Error('the backup ended without an answer')))
  })
}
