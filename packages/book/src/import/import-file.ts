import { say } from '@sumpbook/fluid'
import { refusal } from '../errors.ts'
import { arriving } from '../journal/arriving.ts'
import { canonicalJson } from '../journal/canonical.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import { readThings } from '../setup/read-things.ts'
import type { Things } from '../setup/things.ts'
import type { JournalWriter, Store } from '../store/store.ts'
import { importBookFile } from './import-book.ts'
import { importSheet } from './sheet/import-sheet.ts'
import { firstBytesOf, type SheetSource } from './sheet/sheet-source.ts'
import type { SheetBook } from './sheet-book.ts'
import type { ImportReport, SheetMap } from './sheet-types.ts'

/** How a file is to be taken in. */
export interface ImportOptions {
  /** What a person says of a sheet; nothing to a book file. */
  map?: SheetMap
  /** Says what would happen; nothing is written. */
  preview?: boolean
}

/**
 * Takes a file into the book, whatever it is: a book file, a CSV or a workbook. All or nothing.
 *
 * @throws {BookError} `refused-input` with every fault and open question; nothing was written
 */
export async function importFile(
  store: Store,
  source: SheetSource,
  now: Date,
  { map = {}, preview = false }: ImportOptions = {},
): Promise<ImportReport> {
  const start = await firstBytesOf(source, 64)
  if (start.length === 0)
    throw refusal([{ pointer: '', found: say('an empty file'), expected: say('a book file, CSV or workbook') }], 'file')
  if (looksLikeJson(source.name, start)) return importBookFile(store, await textOf(source), now, { preview })
  return store.write(async (journal) => {
    const things = (await readThings(journal)).at()
    return importSheet(source, map, await sheetBook(journal, things, now), { preview })
  })
}

const looksLikeJson = (name: string, start: Uint8Array) =>
  /\.json$/i.test(name) || /^\uFEFF?\s*\{/.test(new TextDecoder().decode(start))

async function textOf(source: SheetSource): Promise<string> {
  const chunks: Uint8Array[] = []
  for await (const chunk of source.open()) chunks.push(chunk)
  return Buffer.concat(chunks).toString('utf8')
}

/** The book as the reading of a sheet sees it, inside one transaction. */
async function sheetBook(journal: JournalWriter, things: Things, now: Date): Promise<SheetBook> {
  let position = await journal.countThings()
  let withdrawn: Set<string> | null = null
  return {
    shop: things.shop,
    sumps: [...things.sump.values()],
    fluids: [...things.fluid.values()],
    waters: [...things.water.values()],
    bodies: (ids) => journal.bodies(ids),
    withdrawn: async (ids) => {
      // Read once: the voids that this import itself writes concern no cell it has yet to look at.
      withdrawn ??= withdrawnBy(await journal.voids())
      const known = withdrawn
      return new Set(ids.filter((id) => known.has(id)))
    },
    addThing: async (kind, thing) => {
      const { id } = thing as { id: string }
      position += 1
      await journal.addThings([{ kind, id, position, body: canonicalJson(thing) }])
    },
    append: async (entries) => {
      await journal.append(entries.map(arriving), now.toISOString())
    },
  }
}
