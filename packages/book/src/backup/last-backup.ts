import type { Store } from '../store/store.ts'
import type { BackupReport } from './back-up.ts'

/** When a book was last backed up and when that was last tried, by this book's own knowledge: who copies files otherwise is not seen. */
export interface LastBackup {
  made: {
    at: string
    seq: number
    entries: number
    attachments: number
    damagedAttachments: number
    bytes: number
  } | null
  tried: { at: string; good: boolean; seconds: number | null; error: string | null } | null
}

// Kept beside the journal and not in it: the same book makes the same backup, however often that is done.
const [madeName, triedName] = ['backup made', 'backup tried']
const one = (body: unknown) => [{ key: '1', day: 0, body: JSON.stringify(body) }]

export async function lastBackup(store: Pick<Store, 'projections'>): Promise<LastBackup> {
  const read = async <T>(name: string): Promise<T | null> => {
    const [kept] = await store.projections(name)
    return kept?.key === '1' ? (JSON.parse(kept.body) as T) : null
  }
  return { made: await read(madeName), tried: await read(triedName) }
}

/** Notes that a backup was made. */
export async function noteBackup(
  store: Pick<Store, 'write'>,
  { report, bytes, at }: { report: BackupReport; bytes: number; at: Date },
): Promise<void> {
  const { head, entries, attachments, damagedAttachments } = report
  const made: LastBackup['made'] = {
    at: at.toISOString(),
    seq: head.seq,
    entries,
    attachments,
    damagedAttachments: damagedAttachments.length,
    bytes,
  }
  await store.write((journal) => journal.keepProjections(madeName, one(made)))
}

/** Notes how trying a backup went; `error` null: well. */
export async function noteDrill(
  store: Pick<Store, 'write'>,
  { at, seconds, error }: { at: Date; seconds: number | null; error: string | null },
): Promise<void> {
  const tried: LastBackup['tried'] = { at: at.toISOString(), good: error === null, seconds, error }
  await store.write((journal) => journal.keepProjections(triedName, one(tried)))
}
