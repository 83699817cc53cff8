import { BookError } from '../errors.ts'
import { arriving } from '../journal/arriving.ts'
import type { Head } from '../journal/chain.ts'
import type { BesideRow } from '../store/beside.ts'
import type { JournalReader, JournalWriter, ReceivedEntry, StoredThing } from '../store/store.ts'

/** An entry as it arrived once: what makes it the same entry anywhere. Every other column follows from the body. */
export interface ArrivedBody {
  seq: number
  hash: string
  receivedAt: string
  /** Canonical JSON. */
  body: string
  /** What the server knew of how it came; null where nothing. */
  envelope: string | null
}

/** All that a book is, wherever it lies: what a backup holds, and what moves from one store to another. */
export interface BookContent {
  head: Head
  meta: readonly { key: string; value: string }[]
  things: readonly StoredThing[]
  /** People, devices, what is held. */
  beside: readonly BesideRow[]
  /** In order of arrival, some at a time: a book may be larger than the memory. */
  entries(): AsyncIterable<readonly ArrivedBody[]>
}

/** Entries carried at a time. */
const entriesAtOnce = 2000

/** What a book holds at the moment of the snapshot that it is read in. */
export async function contentOf(journal: JournalReader): Promise<BookContent> {
  const { seq, hash } = await journal.head()
  return {
    head: { seq, hash },
    meta: await journal.allMeta(),
    things: await journal.things(),
    beside: await journal.beside(),
    entries: () => entriesOf(journal),
  }
}

async function* entriesOf(journal: JournalReader): AsyncGenerator<ArrivedBody[]> {
  for (let after = 0; ; ) {
    const rows = await journal.rows(after, entriesAtOnce)
    if (rows.length > 0) {
      yield rows.map(({ seq, hash, received_at: receivedAt, body, envelope }) => ({
        seq,
        hash,
        receivedAt,
        body,
        envelope: envelope ?? null,
      }))
    }
    if (rows.length < entriesAtOnce) return
    after = rows.at(-1)!.seq
  }
}

/** Whether a store holds nothing at all. */
export async function isEmpty(journal: JournalReader): Promise<boolean> {
  const [{ seq }, things, meta] = await Promise.all([journal.head(), journal.countThings(), journal.allMeta()])
  return seq === 0 && things === 0 && meta.length === 0 && (await journal.beside()).length === 0
}

/**
 * Puts a book's content into an empty store. Places and hashes are worked out anew and must come out as they were.
 *
 * @throws {BookError} `store-not-empty`, `damaged-store` where the content's chain does not hold
 */
export async function fill(journal: JournalWriter, content: BookContent): Promise<void> {
  if (!(await isEmpty(journal))) {
    throw new BookError('store-not-empty', 'There is a book already where this one was to be put; nothing was changed.')
  }
  for (const { key, value } of content.meta) await journal.setMeta(key, value)
  await journal.addThings(content.things)
  await journal.addBeside(content.beside)
  let arrived: ArrivedBody | undefined
  for await (const entries of content.entries()) {
    await journal.appendReceived(entries.map(received))
    arrived = entries.at(-1)
    const { seq, hash } = await journal.head()
    if (arrived?.seq !== seq || arrived.hash !== hash) throw broken(`up to place ${arrived?.seq}`)
  }
  const { seq, hash } = await journal.head()
  if (seq !== content.head.seq || hash !== content.head.hash) throw broken(`at its end, place ${content.head.seq}`)
}

const broken = (where: string) =>
  new BookError('damaged-store', `The chain of the book does not hold ${where}: "sumpbook verify" says more.`)

function received({ receivedAt, body, envelope }: ArrivedBody): ReceivedEntry {
  return { ...arriving(JSON.parse(body) as Parameters<typeof arriving>[0]), body, receivedAt, envelope }
}
