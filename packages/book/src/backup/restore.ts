import { putAttachment } from '../attachments/folder.ts'
import { fill } from '../copy/content.ts'
import { BookError } from '../errors.ts'
import { sayStoreFault } from '../integrity/fault-list.ts'
import { verifyJournal } from '../integrity/verify-store.ts'
import type { StorePlace } from '../store/place.ts'
import type { Store } from '../store/store.ts'
import { attachmentName, type BookArchive, type Manifest, readBookArchive } from './book-archive.ts'
import { readableWrite } from './disk-full.ts'
import { damaged, memberStream } from './read-archive.ts'
import { type Rebuilding, rebuildFile } from './rebuild-file.ts'
import { rebuildSchema } from './rebuild-schema.ts'

/** How a backup is restored. */
export interface RestoreOptions {
  /** The folder for its attachments; those that are there already stay. */
  attachments: string
  /** Moves the book that is there aside; without it a place with a book is refused. */
  replace?: boolean
}

/** What was restored. */
export interface RestoreReport extends Manifest {
  /** Where the book lies now that was there before; null where there was none. */
  aside: string | null
}

/**
 * Restores a backup. The backup is read to its last byte, its book is built beside the place and found sound, and only then
 * takes its place in one step; until then nothing of what is there is touched.
 *
 * @throws {BookError} `damaged-backup`, `store-not-empty`, `store-in-use`, `disk-full`
 */
export async function restore(
  path: string,
  place: StorePlace,
  { attachments, replace = false }: RestoreOptions,
): Promise<RestoreReport> {
  const archive = await readBookArchive(path)
  const rebuilding = rebuildingOf(place)
  if ((await rebuilding.holdsBook()) && !replace) {
    throw new BookError(
      'store-not-empty',
      'There is a book already; with --replace it is moved aside. Nothing was changed.',
    )
  }
  try {
    await rebuilding.build((store) => filled(store, archive))
    for (const member of archive.attachments) {
      await putAttachment(attachments, attachmentName(member), memberStream(path, member))
    }
    return { ...archive.manifest, aside: await rebuilding.takePlace() }
  } catch (error) {
    throw readableWrite(error, 'the restored book')
  } finally {
    await rebuilding.clear()
  }
}

function rebuildingOf(place: StorePlace): Rebuilding {
  if (place.kind === 'file') return rebuildFile(place.file)
  if (place.kind === 'postgres') return rebuildSchema(place)
  throw new RangeError('a book in memory cannot be restored into')
}

async function filled(store: Store, { content }: BookArchive): Promise<void> {
  await store.write(async (journal) => {
    try {
      await fill(journal, content)
    } catch (error) {
      // What the checksums let pass and the book does not was no book when it was written.
      throw error instanceof BookError && error.code === 'disk-full'
        ? error
        : damaged(`its book is none (${said(error)})`)
    }
    const { faults } = await verifyJournal(journal)
    if (faults.length > 0) throw damaged(sayStoreFault(faults[0]!))
  })
}

const said = (error: unknown) => (error instanceof Error ? error.message : String(error))
