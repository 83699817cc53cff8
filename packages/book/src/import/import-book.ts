import { isDeepStrictEqual } from 'node:util'
import { say } from '@sumpbook/fluid'
import { type Fault, refusal } from '../errors.ts'
import { arriving } from '../journal/arriving.ts'
import { canonicalJson } from '../journal/canonical.ts'
import type { BookFile } from '../schema/book-file.ts'
import { sayFound } from '../schema/faults.ts'
import { thingKinds } from '../schema/things/index.ts'
import { readThings } from '../setup/read-things.ts'
import type { Things } from '../setup/things.ts'
import type { ArrivingEntry, JournalWriter, Store } from '../store/store.ts'
import { readBookDocument, thingsOf } from './book-document.ts'
import type { ImportReport } from './sheet-types.ts'

/** Where fields of a book file that this version does not know, and its empty sections, are kept. */
export const unknownSections = 'book-file-unknown-fields'

/**
 * Takes a whole book file into the book: its things, then its entries in the order of the file. An entry or a thing
 * that is there already, the same, changes nothing; one that is there otherwise refuses the file. All or nothing.
 *
 * @throws {BookError} `refused-input` with every fault; nothing was written
 */
export async function importBookFile(
  store: Store,
  text: string,
  now: Date,
  { preview = false } = {},
): Promise<ImportReport> {
  const { file, warnings } = readBookDocument(text)
  return store.write(async (journal) => {
    const plan = await planImport(journal, file)
    if (!preview) await writePlan(journal, plan, file, now)
    const total = (file.entries ?? []).length + (file.quarantine ?? []).length
    return {
      kind: 'book',
      questions: [],
      faults: [],
      rows: [],
      counts: {
        rows: total,
        new: plan.entries.length,
        same: total - plan.entries.length,
        corrected: 0,
        blank: 0,
        refused: 0,
        entries: plan.entries.length,
        things: plan.things.length,
      },
      warnings,
    }
  })
}

interface Plan {
  things: { kind: string; id: string; position: number; body: string }[]
  entries: ArrivingEntry[]
}

async function planImport(journal: JournalWriter, file: BookFile): Promise<Plan> {
  const sent = [...(file.entries ?? []), ...((file.quarantine ?? []) as { id: string; at: string; kind: string }[])]
  const coming = new Map(sent.map((entry) => [entry.id.toLowerCase(), arriving(entry)]))
  const standing = await journal.bodies([...coming.keys()])
  const conflicts = sent.flatMap((entry, i): Fault[] => {
    const body = standing.get(entry.id.toLowerCase())
    if (body === undefined || body === canonicalJson(entry)) return []
    return [
      {
        pointer: `/entries/${i}`,
        found: say('another entry under this id'),
        expected: say('what the book has under {id}', { id: entry.id }),
      },
    ]
  })
  const things = await planThings(journal, file)
  const faults = [...conflicts, ...things.faults]
  if (faults.length > 0) throw refusal(faults, 'book file')
  return { things: things.fresh, entries: [...coming.values()].filter(({ id }) => !standing.has(id)) }
}

async function planThings(journal: JournalWriter, file: BookFile): Promise<{ fresh: Plan['things']; faults: Fault[] }> {
  const base = await journal.things()
  const known = new Set(base.map(({ kind, id }) => `${kind}/${id}`))
  const now = (await readThings(journal)).at()
  const pointers = pointersOf(file)
  const coming = thingsOf(file).filter(({ kind }) => kind !== 'shop' || file.shop !== undefined)
  const stands = ({ kind, id }: { kind: string; id: string }) =>
    known.has(`${kind}/${id}`) || present(now, kind, id) !== undefined
  const faults = coming.filter(stands).flatMap(({ kind, id, body }) => {
    const there = present(now, kind, id)
    return there === undefined ? [] : differences(pointers.get(`${kind}/${id}`)!, body, there)
  })
  const fresh = coming
    .filter((thing) => !stands(thing))
    .map(({ kind, id, body }, position) => ({ kind, id, position: base.length + position, body: canonicalJson(body) }))
  return { fresh, faults }
}

function present(now: Things, kind: string, id: string): Record<string, unknown> | undefined {
  if (kind === 'shop') return Object.keys(now.shopAsTold).length === 0 ? undefined : now.shopAsTold
  return now[kind as keyof typeof thingKinds].get(id)
}

/** A thing the book has otherwise: what changed since when is for a set-up entry to say, not for a file. */
function differences(pointer: string, coming: Record<string, unknown>, there: Record<string, unknown>): Fault[] {
  return Object.entries(coming)
    .filter(([field, value]) => !isDeepStrictEqual(value, there[field]))
    .map(([field, value]) => ({
      pointer: `${pointer}/${field}`,
      found: sayFound(value),
      expected: say('{value}, as the book has it (a change is a set-up entry with the day from which it holds)', {
        value: sayFound(there[field]),
      }),
    }))
}

function pointersOf(file: BookFile): Map<string, string> {
  const pointers = new Map([['shop/shop', '/shop']])
  for (const [kind, { section }] of Object.entries(thingKinds)) {
    for (const [i, { id }] of (file[section] ?? []).entries()) pointers.set(`${kind}/${id}`, `/${section}/${i}`)
  }
  return pointers
}

async function writePlan(journal: JournalWriter, { things, entries }: Plan, file: BookFile, now: Date): Promise<void> {
  await journal.addThings(things)
  await journal.append(entries, now.toISOString())
  const unknown = unknownSectionsOf(file)
  if (unknown !== null)
    await journal.setMeta(
      unknownSections,
      canonicalJson({ ...JSON.parse((await journal.meta(unknownSections)) ?? '{}'), ...unknown }),
    )
}

const knownSections = new Set([
  'format',
  'shop',
  'entries',
  'quarantine',
  ...Object.values(thingKinds).map(({ section }) => section),
])

function unknownSectionsOf(file: BookFile): Record<string, unknown> | null {
  const unknown = Object.entries(file).filter(
    ([section, value]) =>
      !knownSections.has(section) || (Array.isArray(value) && value.length === 0 && section !== 'entries'),
  )
  return unknown.length === 0 ? null : Object.fromEntries(unknown)
}
