import { utc } from '../journal/order.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Entry, EntryOf, Reading } from '../schema/entries/index.ts'
import type { JournalReader, StoredEntry } from '../store/store.ts'

/** What the journal tells of tests at one sump, oldest first; what was withdrawn is not among it. */
export interface ToldOfTests {
  /** Readings with a pH, nitrite, germs, hardness, analytes, or that take or answer a sample. */
  readings: TestReading[]
  /** When somebody looked and smelt. */
  looks: { entry: string; at: string }[]
  /** When strength was read. */
  strengths: { entry: string; at: string }[]
  /** All that were ever written down, each with its instant. */
  charges: (EntryOf<'charge'> & { at: string })[]
  /** The last one written down. */
  job: EntryOf<'job'> | null
}

/** A reading with its instants as UTC text. */
export type TestReading = Reading & {
  at: string
  /** When its result was read; when it was written down where nobody said. */
  seenAt: string
}

/** One shop's, with what a later question needs to find more. */
export interface ToldOfShop {
  bySump: ReadonlyMap<string, ToldOfTests>
  /** Every reading of these days that stands, by id, of known and unknown sumps. */
  readings: ReadonlyMap<string, TestReading>
  withdrawn: ReadonlySet<string>
  /** Fresh values looked up in an older journal, by charge: the same as long as the journal is. */
  freshFound: Map<string, TestReading | null>
}

/** Words without which a reading's text is of no interest here. */
const telling = ['"ph"', '"nitrite"', '"bacteria"', '"fungi"', '"hardness"', '"analytes"', '"pending"', '"answers"']
const strengthWords = ['"brix"', '"titration"']

const kept = new WeakMap<JournalReader, { key: string; told: ToldOfShop }>()

/**
 * What the journal tells of the tests of a shop since an instant, up to another. Charges and jobs are read however old they are: results
 * belong to the charge that was in the sump.
 */
export async function toldOfTests(
  journal: JournalReader,
  { since, until, sump }: { since: string; until: string; sump?: string },
): Promise<ToldOfShop> {
  if (sump !== undefined) return upTo(await readTold(journal, since, sump), until)
  const { seq, hash } = await journal.head()
  const key = `${seq} ${hash} ${since}`
  const known = kept.get(journal)
  const told = known?.key === key ? known.told : await readTold(journal, since)
  kept.set(journal, { key, told })
  return upTo(told, until)
}

async function readTold(journal: JournalReader, since: string, sump?: string): Promise<ToldOfShop> {
  const of = sump === undefined ? {} : { sump }
  const [recent, older, voids] = await Promise.all([
    journal.entries({ ...of, kinds: ['reading', 'observation'], order: 'time', since }),
    journal.entries({ ...of, kinds: ['charge', 'job'], order: 'time' }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const bySump = new Map<string, ToldOfTests>()
  const readings = new Map<string, TestReading>()
  const at = (id: string) => {
    const told = bySump.get(id) ?? nothingTold()
    bySump.set(id, told)
    return told
  }
  for (const stored of [...older, ...recent]) {
    if (stored.sump === null || withdrawn.has(stored.id)) continue
    take(at(stored.sump), stored, readings)
  }
  return { bySump, readings, withdrawn, freshFound: new Map() }
}

export const nothingTold = (): ToldOfTests => ({ readings: [], looks: [], strengths: [], charges: [], job: null })

function take(told: ToldOfTests, stored: StoredEntry, readings: Map<string, TestReading>): void {
  const { id, at, kind, body } = stored
  if (kind === 'observation') {
    told.looks.push({ entry: id, at })
    return
  }
  if (kind === 'reading') {
    if (strengthWords.some((word) => body.includes(word))) told.strengths.push({ entry: id, at })
    if (!telling.some((word) => body.includes(word))) return
    const reading = asTold(stored)
    told.readings.push(reading)
    readings.set(id, reading)
    return
  }
  const entry = JSON.parse(body) as Entry
  if (entry.kind === 'charge') told.charges.push({ ...entry, id, at })
  if (entry.kind === 'job') told.job = entry
}

/** A stored reading with its instants. */
export function asTold({ id, at, body, receivedAt }: StoredEntry): TestReading {
  const entry = JSON.parse(body) as Reading
  return { ...entry, id, at, seenAt: utc(entry.readAt ?? entry.recordedAt ?? receivedAt) }
}

/** Without what lies after an instant, or was read after it. */
function upTo({ bySump, readings, withdrawn, freshFound }: ToldOfShop, until: string): ToldOfShop {
  const isBy = ({ at }: { at: string }) => at <= until
  const isSeen = (reading: TestReading) => isBy(reading) && (reading.answers === undefined || reading.seenAt <= until)
  /** Oldest first, so that usually none is left out. */
  const before = <Told extends { at: string }>(told: Told[]) =>
    told.length === 0 || isBy(told.at(-1)!) ? told : told.filter(isBy)
  return {
    bySump: new Map(
      [...bySump].map(([id, told]) => [
        id,
        {
          readings: told.readings.filter(isSeen),
          looks: before(told.looks),
          strengths: before(told.strengths),
          charges: before(told.charges),
          job: told.job !== null && utc(told.job.at) <= until ? told.job : null,
        },
      ]),
    ),
    readings: new Map([...readings].filter(([, reading]) => isSeen(reading))),
    withdrawn,
    freshFound,
  }
}

/** The charge that was in a sump at an instant; null before the first that was written down. */
export const chargeAt = (
  { charges }: Pick<ToldOfTests, 'charges'>,
  at: string,
): ToldOfTests['charges'][number] | null => charges.findLast((charge) => charge.at <= at) ?? null
