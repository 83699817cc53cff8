import type { JournalReader } from '../store/store.ts'
import { isAttachmentName } from './folder.ts'

/** Entries read at a time. */
const entriesAtOnce = 2000

/** The attachment that an entry names, by its `photo`; null where it names none. */
export function attachmentNamedIn(body: string): string | null {
  if (!body.includes('"photo"')) return null
  const { photo } = JSON.parse(body) as { photo?: unknown }
  return typeof photo === 'string' && isAttachmentName(photo) ? photo : null
}

/** Every attachment that entries name, with the first entry to do so. */
export async function namedAttachments(journal: JournalReader): Promise<Map<string, string>> {
  const named = new Map<string, string>()
  for (let after = 0; ; ) {
    const rows = await journal.rows(after, entriesAtOnce)
    for (const { id, body } of rows) {
      const name = attachmentNamedIn(body)
      if (name !== null && !named.has(name)) named.set(name, id)
    }
    if (rows.length < entriesAtOnce) return named
    after = rows.at(-1)!.seq
  }
}
