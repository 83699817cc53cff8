// A thread that makes one backup, tries it where asked, answers, and ends.
import { parentPort, workerData } from 'node:worker_threads'
import { BookError } from '../errors.ts'
import { openStore } from '../store/open.ts'
import { type BackupAnswer, type BackupOrder, doBackup } from './backup-job.ts'

async function answer(order: BackupOrder): Promise<BackupAnswer> {
  const store = await openStore(order.place, { mustExist: true })
  try {
    return { done: await doBackup(store, order) }
  } catch (error) {
    if (!(error instanceof BookError)) return { failure: error instanceof Error ? error.message : String(error) }
    const { code, message, faults } = error
    return { refusal: { code, message, faults } }
  } finally {
    await store.close()
  }
}

parentPort!.postMessage(await answer(workerData as BackupOrder))
