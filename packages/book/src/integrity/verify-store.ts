import { BookError } from '../errors.ts'
import { chainHash, emptyHead, type Head } from '../journal/chain.ts'
import { type ThingKind, thingKinds } from '../schema/things/index.ts'
import { readThings } from '../setup/read-things.ts'
import { arrivalRow, emptySeal, metaRow, sealed, thingRow } from '../store/seals.ts'
import type { JournalReader, SealedHead, Store, StoredThing } from '../store/store.ts'
import type { EntryRow } from '../store/tables.ts'
import { entryFaults } from './entry-faults.ts'
import { type FaultList, faultList, type StoreFault } from './fault-list.ts'
import { thingFaults } from './thing-faults.ts'

/** What a book's store was found to be. */
export interface StoreReport {
  /** Whether the book is as it was written. */
  sound: boolean
  entries: number
  things: number
  /** The end of the chain as the entries themselves have it: to be compared with one printed or kept elsewhere. */
  head: Head
  /** What is wrong, in order of arrival; the first is the place to look at first. */
  faults: StoreFault[]
  /** Faults beyond those listed. */
  more: number
  /** What is as it arrived and still worth a look: a void of an entry nobody has sent. */
  remarks: string[]
}

/** A head that was printed or kept elsewhere; its hash may be cut short. */
export interface KnownHead {
  seq: number
  hash: string
}

/** Rows read at a time. */
const rowsAtOnce = 2000

/**
 * Walks a book from its first entry to its last and works everything out anew that can be: places, hashes, seals, columns,
 * references. All of one moment, while others write.
 *
 * It finds what was changed by hand or lost by a disk. Somebody who may write to the database and works the hashes out anew
 * as well is found only by `known`, a head that was kept elsewhere.
 */
export async function verifyStore(store: Store, known?: KnownHead): Promise<StoreReport> {
  const onDisk = await store.faultsOfDisk()
  return store.snapshot((journal) => verifyJournal(journal, { onDisk, known }))
}

/** The same inside a transaction. */
export async function verifyJournal(
  journal: JournalReader,
  { onDisk = [], known }: { onDisk?: readonly string[]; known?: KnownHead | undefined } = {},
): Promise<StoreReport> {
  const list = faultList()
  for (const fault of onDisk) list.add({ seq: null, id: null, fault: `the file: ${fault}` })
  const walked = await walk(journal, list, known)
  const things = await journal.things()
  for (const thing of things) {
    for (const fault of thingFaults(thing)) list.add({ seq: null, id: `${thing.kind} ${thing.id}`, fault })
  }
  await compareHead(journal, { walked, things, list })
  return {
    sound: list.count === 0,
    entries: walked.entries,
    things: things.length,
    head: { seq: walked.head.seq, hash: walked.head.hash },
    faults: list.faults,
    more: list.count - list.faults.length,
    remarks: list.count === 0 ? [...walked.remarks, ...(await remarksOf(journal, walked.voids))] : [],
  }
}

interface Walked {
  entries: number
  head: Omit<SealedHead, 'thingsSeal' | 'metaSeal'>
  voids: { id: string; target: string }[]
  remarks: string[]
}

async function walk(journal: JournalReader, list: FaultList, known: KnownHead | undefined): Promise<Walked> {
  const walked: Walked = {
    entries: 0,
    head: { ...emptyHead, setupSeq: 0, setupHash: emptyHead.hash, arrivalsSeal: emptySeal },
    voids: [],
    remarks: [],
  }
  for (;;) {
    const rows = await journal.rows(walked.head.seq, rowsAtOnce)
    for (const row of rows) step(walked, row, list, known)
    if (rows.length < rowsAtOnce) break
  }
  if (known !== undefined && known.seq > walked.head.seq) {
    list.add({
      seq: known.seq,
      id: null,
      fault: 'the head that was kept names this place, and the book ends before it',
    })
  }
  return walked
}

function step(walked: Walked, row: EntryRow, list: FaultList, known: KnownHead | undefined): void {
  const { seq, id, hash, body, kind, received_at: receivedAt, envelope } = row
  const { head } = walked
  const found = (fault: string) => list.add({ seq, id, fault })
  if (seq !== head.seq + 1) found(`the entries before it are missing, from place ${head.seq + 1} on`)
  // From the hash that stands before it, right or wrong: one fault is told once, where it is.
  if (chainHash(head.hash, body, seq) !== hash)
    found('its hash is not that of its body, its place and the hash before it')
  const { faults, remarks } = entryFaults(row)
  for (const fault of faults) found(fault)
  for (const remark of remarks) walked.remarks.push(`The entry ${id} (place ${seq}) ${remark}.`)
  if (!isInstant(receivedAt)) found(`its instant of arrival is ${JSON.stringify(receivedAt)}`)
  if (known?.seq === seq && !hash.startsWith(known.hash.toLowerCase())) {
    found('the head that was kept has another hash at this place')
  }
  walked.entries += 1
  walked.head.arrivalsSeal = sealed(head.arrivalsSeal, [arrivalRow({ seq, receivedAt, envelope })])
  if (kind === 'setup' || kind === 'void') [head.setupSeq, head.setupHash] = [seq, hash]
  if (kind === 'void') walked.voids.push({ id, target: targetOf(body) })
  head.seq = seq
  head.hash = hash
}

const isInstant = (text: string) =>
  /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/.test(text) && !Number.isNaN(Date.parse(text))

function targetOf(body: string): string {
  const [, target = ''] = /"entry":"([^"]*)"/.exec(body) ?? []
  return target.toLowerCase()
}

async function compareHead(
  journal: JournalReader,
  { walked, things, list }: { walked: Walked; things: readonly StoredThing[]; list: FaultList },
): Promise<void> {
  const found = (fault: string) => list.add({ seq: null, id: null, fault })
  const kept = await headOrNull(journal)
  if (kept === null) return found('the head of the chain is missing')
  const { seq, hash, setupSeq, setupHash, arrivalsSeal } = walked.head
  if (kept.seq !== seq) found(`the head says that ${kept.seq} entries arrived, and the last one stands at place ${seq}`)
  else if (kept.hash !== hash) found('the head has another hash than the last entry')
  if (kept.setupSeq !== setupSeq || kept.setupHash !== setupHash) {
    found('the head names another entry as the last that changed a thing')
  }
  if (kept.arrivalsSeal !== arrivalsSeal) found('an instant of arrival or an envelope is not the one that was written')
  if (kept.thingsSeal !== sealed(emptySeal, things.map(thingRow))) {
    found('the things of the shop are not those that came in: one was changed, added or taken away')
  }
  if (kept.metaSeal !== sealed(emptySeal, (await journal.allMeta()).map(metaRow))) {
    found('what the book says of itself is not what was written')
  }
}

async function headOrNull(journal: JournalReader): Promise<SealedHead | null> {
  try {
    return await journal.sealedHead()
  } catch (error) {
    if (error instanceof BookError && error.code === 'damaged-store') return null
    throw error
  }
}

/** Two devices that have not met yet make such entries honestly: they are no faults. */
async function remarksOf(journal: JournalReader, voids: Walked['voids']): Promise<string[]> {
  const there = await journal.bodies(voids.map(({ target }) => target))
  const open = voids.filter(({ target }) => !there.has(target))
  const now = (await readThings(journal)).at()
  const setups = await journal.entries({ kinds: ['setup'], order: 'time' })
  const ofNothing = setups.filter(({ body }) => {
    const { kind, id } = (JSON.parse(body) as { about: { kind: string; id?: string } }).about
    return kind in thingKinds && !now[kind as ThingKind].has(id ?? '')
  })
  return [
    ...open.map(({ id, target }) => `The void ${id} withdraws ${target}, which has not arrived.`),
    ...ofNothing.map(({ id }) => `The set-up ${id} is about a thing that is not told in full yet.`),
  ]
}
