import { unknownSections } from '../import/import-book.ts'
import { isQuarantined } from '../journal/references.ts'
import { bookFormat } from '../schema/book-file.ts'
import { entryKinds } from '../schema/entries/index.ts'
import { type ThingKind, thingKinds } from '../schema/things/index.ts'
import { readThings } from '../setup/read-things.ts'
import type { JournalReader, StoredEntry } from '../store/store.ts'

/** Entries read at a time: the file grows, the memory does not. */
const entriesAtOnce = 2000

/**
 * The whole book as a book file, piece by piece: the things as they are now, every entry in order of arrival, and what
 * counts nowhere yet under `quarantine`. Importing the pieces into an empty book gives the same book again.
 */
export async function* exportBook(journal: JournalReader): AsyncGenerator<string> {
  const things = (await readThings(journal)).at()
  const toldOfShop = (await journal.things()).some(({ kind }) => kind === 'shop')
  const unknown = JSON.parse((await journal.meta(unknownSections)) ?? '{}') as Record<string, unknown>
  const written = new Set<string>()
  yield `{\n"format": ${JSON.stringify(bookFormat)}`
  if (toldOfShop || Object.keys(things.shopAsTold).length > 0) yield `,\n"shop": ${JSON.stringify(things.shopAsTold)}`
  for (const [kind, { section }] of Object.entries(thingKinds)) {
    const all = [...things[kind as ThingKind].values()]
    if (all.length === 0) continue
    written.add(section)
    yield `,\n"${section}": [\n${all.map((thing) => JSON.stringify(thing)).join(',\n')}\n]`
  }
  for (const [section, value] of Object.entries(unknown))
    if (!written.has(section)) yield `,\n${JSON.stringify(section)}: ${JSON.stringify(value)}`
  const quarantine: string[] = []
  yield ',\n"entries": ['
  let separator = '\n'
  for await (const { body } of everyEntry(journal)) {
    const entry = JSON.parse(body) as { kind: string; sump?: string }
    if (isQuarantined(entry, things) || !(entryKinds as readonly string[]).includes(entry.kind)) quarantine.push(body)
    else {
      yield `${separator}${body}`
      separator = ',\n'
    }
  }
  yield '\n]'
  if (quarantine.length > 0) yield `,\n"quarantine": [\n${quarantine.join(',\n')}\n]`
  yield '\n}\n'
}

async function* everyEntry(journal: JournalReader): AsyncGenerator<StoredEntry> {
  let after = { seq: 0 }
  for (;;) {
    const entries = await journal.entries({ order: 'arrival', after, limit: entriesAtOnce })
    yield* entries
    const last = entries.at(-1)
    if (last === undefined || entries.length < entriesAtOnce) return
    after = { seq: last.seq }
  }
}
