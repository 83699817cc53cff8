import { canonicalJson } from '../../journal/canonical.ts'
import type { Entry } from '../../schema/entries/index.ts'
import type { SheetBook } from '../sheet-book.ts'
import { entryIdAt, type Slot, voidIdAt } from './entry-id.ts'
import type { Draft } from './row-entries.ts'

/** A draft at its place in the sheet. */
export interface Placed {
  slot: Slot
  draft: Draft
}

/** What becomes of one: nothing, where it stands already; a new entry; or a void and a new entry, where its cell was corrected. */
export interface Revised {
  fate: 'new' | 'same' | 'corrected'
  /** How many entries that takes. */
  count: number
  entries(): Entry[]
}

/** A cell corrected more often than this is no cell of a log. */
const mostRevisions = 10_000

/**
 * Finds for each place the last revision that the book has, and compares it with the sheet. The same content stays as it is,
 * withdrawn or not; another content withdraws what stands and becomes the next revision.
 */
export async function revise(
  placed: readonly Placed[],
  book: Pick<SheetBook, 'bodies' | 'withdrawn'>,
): Promise<Revised[]> {
  const last = await lastRevisions(placed, book)
  const changed = last.flatMap((one, i) =>
    one !== null && one.body !== bodyOf(placed[i]!, one.revision) ? [entryIdAt(placed[i]!.slot, one.revision)] : [],
  )
  const withdrawn = changed.length === 0 ? new Set<string>() : await book.withdrawn(changed)
  return placed.map((one, i) => revisedFrom(one, last[i]!, withdrawn))
}

/** The entry at a place, as a revision of it. */
export const entryFrom = ({ slot, draft }: Placed, revision: number): Entry =>
  ({ ...draft.entry, id: entryIdAt(slot, revision) }) as unknown as Entry

const bodyOf = (placed: Placed, revision: number): string => canonicalJson(entryFrom(placed, revision))

interface Standing {
  revision: number
  body: string
}

async function lastRevisions(placed: readonly Placed[], book: Pick<SheetBook, 'bodies'>): Promise<(Standing | null)[]> {
  const last: (Standing | null)[] = placed.map(() => null)
  let open = placed.map((_, i) => i)
  for (let revision = 0; open.length > 0 && revision < mostRevisions; revision += 1) {
    const ids = open.map((i) => entryIdAt(placed[i]!.slot, revision))
    const bodies = await book.bodies(ids)
    const found = open.flatMap((i, at) => (bodies.has(ids[at]!) ? [{ i, body: bodies.get(ids[at]!)! }] : []))
    for (const { i, body } of found) last[i] = { revision, body }
    open = found.map(({ i }) => i)
  }
  return last
}

function revisedFrom(placed: Placed, standing: Standing | null, withdrawn: ReadonlySet<string>): Revised {
  if (standing === null) return { fate: 'new', count: 1, entries: () => [entryFrom(placed, 0)] }
  if (standing.body === bodyOf(placed, standing.revision)) return { fate: 'same', count: 0, entries: () => [] }
  const { slot } = placed
  const old = entryIdAt(slot, standing.revision)
  const next = () => entryFrom(placed, standing.revision + 1)
  if (withdrawn.has(old)) return { fate: 'corrected', count: 1, entries: () => [next()] }
  return { fate: 'corrected', count: 2, entries: () => [voidOf(slot, standing.revision), next()] }
}

const voidOf = (slot: Slot, revision: number): Entry => ({
  id: voidIdAt(slot, revision),
  sump: slot.sump,
  at: slot.at,
  kind: 'void',
  entry: entryIdAt(slot, revision),
  reason: 'corrected in the sheet',
})
