import type { Fault } from '../errors.ts'
import type { Entry } from '../schema/entries/index.ts'
import { sayFound } from '../schema/faults.ts'
import type { ThingKind } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'

/** A place in an entry where it points at a thing of the shop. */
interface Reference {
  pointer: string
  kind: ThingKind
  id: string
}

/** Subjects that a book knows without a section of their own. */
const withoutSection = new Set(['shop', 'stock', 'waste'])

/** References to things that the book does not have. */
export function danglingReferences(entry: Entry, things: Things): Reference[] {
  return referencesOf(entry).filter(({ kind, id }) => !things[kind].has(id))
}

/**
 * Whether an entry counts nowhere for now, since its own subject is unknown. It is kept, and counts from the moment the
 * subject is there: two phones may send the entry before the sump.
 */
export function isQuarantined(
  { sump, about, kind }: { sump?: unknown; about?: unknown; kind: string },
  things: Things,
): boolean {
  if (typeof sump === 'string') return !things.sump.has(sump)
  const thing = about as { kind: string; id?: string } | undefined
  if (thing === undefined || kind === 'setup' || withoutSection.has(thing.kind)) return false
  return !(thing.kind in things) || !things[thing.kind as ThingKind].has(thing.id ?? '')
}

/** The faults that dangling references are in a file, which has to be whole. */
export function referenceFaults(entry: Entry, things: Things, at: string): Fault[] {
  return danglingReferences(entry, things).map(({ pointer, kind, id }) => ({
    pointer: at + pointer,
    found: sayFound(id),
    expected: `the id of a ${kind} of this book`,
  }))
}

function referencesOf(entry: Entry): Reference[] {
  const references: Reference[] = []
  const point = (pointer: string, kind: ThingKind, id: unknown) => {
    if (typeof id === 'string') references.push({ pointer, kind, id })
  }
  point('/sump', 'sump', entry.sump)
  if (entry.about !== undefined && entry.kind !== 'setup') {
    const { kind, id } = entry.about as { kind: string; id?: string }
    if (!withoutSection.has(kind)) point('/about/id', kind as ThingKind, id)
  }
  if ('fluid' in entry) point('/fluid', 'fluid', entry.fluid)
  if ('water' in entry) point('/water', 'water', entry.water)
  if (entry.kind === 'reading') point('/instrument', 'instrument', entry.instrument)
  if (entry.kind === 'addition') point('/meter/id', 'meter', entry.meter?.id)
  return references
}
