import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { sayStoreFault } from '../integrity/fault-list.ts'
import { verifyStore } from '../integrity/verify-store.ts'
import { openSqliteStore } from '../store/sqlite/open.ts'
import type { Store } from '../store/store.ts'
import { backUp } from './back-up.ts'
import { contentDigest, type Manifest } from './book-archive.ts'
import { damaged } from './read-archive.ts'
import { restore } from './restore.ts'

/** What a drill showed. */
export interface DrillReport extends Manifest {
  /** Whether a backup of the restored book is the same file; not so where another version of the compression made it. */
  sameBytes: boolean
  seconds: number
  /** How the backup stands to the book it was compared with; null where there was none. */
  live: { sameBook: boolean; arrivedSince: number } | null
}

/**
 * Restores a backup into a temporary folder, walks the restored book, backs it up again, compares what the two backups hold, and
 * takes all of it away: that a backup can be restored is known only from having done it.
 *
 * @param live the book in use, to say what has arrived since
 * @throws {BookError} `damaged-backup`
 */
export async function restoreDrill(path: string, live: Store | null): Promise<DrillReport> {
  const from = performance.now()
  const folder = await mkdtemp(join(tmpdir(), 'sumpbook-drill-'))
  try {
    const file = join(folder, 'book.sqlite')
    const attachments = join(folder, 'attachments')
    const { aside: _, ...manifest } = await restore(path, { kind: 'file', file }, { attachments })
    const store = await openSqliteStore(file)
    try {
      const { faults } = await verifyStore(store, manifest.head)
      if (faults.length > 0) throw damaged(`the restored book is not sound: ${sayStoreFault(faults[0]!)}`)
      const again = join(folder, 'again')
      await store.snapshot((journal) => backUp(journal, again, { attachments }))
      if ((await contentDigest(again)) !== (await contentDigest(path))) {
        throw damaged('the restored book does not hold what the backup holds')
      }
      const sameBytes = (await digestOf(again)) === (await digestOf(path))
      const seconds = (performance.now() - from) / 1000
      return { ...manifest, sameBytes, seconds, live: live === null ? null : await comparedWith(live, manifest) }
    } finally {
      await store.close()
    }
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

async function comparedWith(live: Store, { head }: Manifest): Promise<{ sameBook: boolean; arrivedSince: number }> {
  const [there] = head.seq === 0 ? [] : await live.rows(head.seq - 1, 1)
  const { seq } = await live.head()
  return { sameBook: head.seq === 0 || there?.hash === head.hash, arrivedSince: seq - head.seq }
}

async function digestOf(path: string): Promise<string> {
  const hash = createHash('sha256')
  await pipeline(createReadStream(path), hash)
  return hash.digest('hex')
}
