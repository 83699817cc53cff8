import { utc } from '../journal/order.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Entry, EntryOf, Reading } from '../schema/entries/index.ts'
import type { Sump } from '../schema/things/index.ts'
import type { ThingHistory, Things } from '../setup/things.ts'
import type { JournalReader, StoredEntry } from '../store/store.ts'
import { strengthRead } from './strength-read.ts'

/** What was read of a sump last, as found, and what it was filled with. */
export interface LastReadings {
  strength: Reading | null
  /** What that reading came to by itself, by the scale of its day, percent; null where that is not known. */
  concentration: number | null
  /** A level that was read long ago is no longer shown. */
  level: Reading | null
  /** Its last charge. */
  charge: EntryOf<'charge'> | null
}

/** Entries read from the journal at once, youngest first. */
const atOnce = 1000
/** A reading older than this is looked for sump by sump, and only that of the strength. */
const recentDays = 60

/** What was read last in a whole shop, and for which questions that is the answer. */
interface Remembered {
  /** Of the journal's head: with what arrives it is another. */
  hash: string
  /** As they are at the instant: from the next change of a thing on they are others. */
  things: Things
  /** UTC text: the instant up to which was read, and that of the first entry after it; null where there is none yet. */
  until: string
  next: string | null
  read: ReadonlyMap<string, LastReadings>
}
const remembered = new WeakMap<JournalReader, Remembered>()

/**
 * Every sump's last readings, up to an instant. They stay what they are until something arrives, a thing is another, or time comes to an
 * entry that is dated ahead: until then nothing is read again.
 */
export async function lastReadingsOfShop(
  journal: JournalReader,
  history: ThingHistory,
  until: string,
): Promise<ReadonlyMap<string, LastReadings>> {
  // The head is read first: what is kept under it may be newer than it, never older.
  const { hash } = await journal.head()
  const things = history.at(until)
  const known = remembered.get(journal)
  const isKnown =
    known?.hash === hash &&
    known.things === things &&
    known.until <= until &&
    (known.next === null || until < known.next)
  if (isKnown) return known.read
  const read = await lastReadings(journal, history, { sumps: [...things.sump.values()], until })
  const [next] = await journal.entries({
    kinds: ['reading', 'charge'],
    order: 'time',
    after: { at: until, rank: afterAll, id: '' },
    limit: 1,
  })
  remembered.set(journal, { hash, things, until, next: next?.at ?? null, read })
  return read
}
/** No entry of an instant has this rank. */
const afterAll = 1000

/** Each sump's last readings of strength and of level, up to an instant. */
export async function lastReadings(
  journal: JournalReader,
  history: ThingHistory,
  { sumps, until }: { sumps: readonly Sump[]; until: string },
): Promise<Map<string, LastReadings>> {
  const withdrawn = withdrawnBy(await journal.voids())
  const found = new Map(sumps.map(({ id }) => [id, { strength: null, level: null } as Found]))
  const alone = sumps.length === 1 ? { sump: sumps[0]!.id } : {}
  const missing = { strength: new Set(found.keys()), level: new Set(found.keys()) }
  const take = (page: readonly StoredEntry[]) => {
    for (const { id, sump, body } of page) {
      if (sump === null || withdrawn.has(id)) continue
      const isWanted = (what: keyof Found, fields: readonly string[]) =>
        missing[what].has(sump) && fields.some((field) => body.includes(field))
      const [strength, level] = [isWanted('strength', strengthFields), isWanted('level', levelFields)]
      if (!strength && !level) continue
      const entry = JSON.parse(body) as Reading
      for (const what of ['strength', 'level'] as const) {
        if (!(what === 'strength' ? strength && hasStrength(entry) : level && hasLevel(entry))) continue
        found.get(sump)![what] = entry
        missing[what].delete(sump)
      }
    }
  }
  for await (const page of pagesBack(journal, { ...alone, until }, recentDays)) {
    take(page)
    if (missing.strength.size === 0 && missing.level.size === 0) break
  }
  missing.level.clear()
  for (const sump of missing.strength) {
    for await (const page of pagesBack(journal, { sump, until }, Number.POSITIVE_INFINITY)) {
      take(page)
      if (!missing.strength.has(sump)) break
    }
  }
  const charges = await chargesOf(journal, { ...alone, until }, withdrawn)
  return new Map(
    sumps.map(({ id, fluid }) => {
      const { strength, level } = found.get(id)!
      const concentration = strength === null ? null : comeTo(strength, charges.get(id) ?? [], fluid, history)
      return [id, { strength, level, concentration, charge: charges.get(id)?.at(-1) ?? null }]
    }),
  )
}

interface Found {
  strength: Reading | null
  level: Reading | null
}

/** An entry without any of these in its text is not worth reading. */
const strengthFields = ['"brix"', '"titration"']
const levelFields = ['"level"', '"volume"']
const hasStrength = ({ brix, titration }: Reading) => brix !== undefined || titration !== undefined
const hasLevel = ({ level, volume }: Reading) => level !== undefined || volume !== undefined

/** Readings page by page from an instant back, as far as so many days before the youngest. */
async function* pagesBack(
  journal: JournalReader,
  { sump, until }: { sump?: string; until: string },
  days: number,
): AsyncGenerator<StoredEntry[]> {
  const of = sump === undefined ? {} : { sump }
  let since: string | null = null
  let last: StoredEntry | undefined
  do {
    const page: StoredEntry[] = await journal.entries({
      ...of,
      kinds: ['reading'],
      order: 'time-backwards',
      until,
      limit: atOnce,
      ...(since === null ? {} : { since }),
      ...(last === undefined ? {} : { after: { at: last.at, rank: last.rank, id: last.id } }),
    })
    // Counted from the youngest reading, since a book may not have been written for long.
    if (since === null && page.length > 0 && Number.isFinite(days)) {
      since = new Date(Date.parse(page[0]!.at) - days * 86_400_000).toISOString()
    }
    const oldest = since ?? ''
    yield page.filter(({ at }) => at >= oldest)
    last = page.length < atOnce ? undefined : page.at(-1)
  } while (last !== undefined)
}

async function chargesOf(
  journal: JournalReader,
  of: { sump?: string; until: string },
  withdrawn: ReadonlySet<string>,
): Promise<Map<string, EntryOf<'charge'>[]>> {
  const entries = await journal.entries({ ...of, kinds: ['charge'], order: 'time' })
  const standing = entries.filter(({ id }) => !withdrawn.has(id)).map(({ body }) => JSON.parse(body) as Entry)
  return Map.groupBy(
    standing.filter((entry): entry is EntryOf<'charge'> => entry.kind === 'charge'),
    ({ sump }) => sump,
  )
}

/** By the fluid and the lot that were in the sump at that time. */
function comeTo(
  reading: Reading,
  charges: readonly EntryOf<'charge'>[],
  fluid: string,
  history: ThingHistory,
): number | null {
  const at = utc(reading.at)
  const before = charges.filter((charge) => utc(charge.at) <= at)
  const then = history.at(at)
  const of = before.findLast((charge) => charge.fluid !== undefined)?.fluid ?? fluid
  return strengthRead(reading, then.fluid.get(of), then, before.at(-1)?.lot ?? null)?.mean ?? null
}
