import { canonicalJson } from '../../journal/canonical.ts'
import type { Entry } from '../../schema/entries/index.ts'
import { entry } from '../../schema/entries/index.ts'
import { type Fluid, type Sump, thingKinds, type Water } from '../../schema/things/index.ts'
import type { SheetBook } from '../sheet-book.ts'

/** A book in memory that says what was written to it; for tests. It refuses what the journal would refuse. */
export interface MemoryBook extends SheetBook {
  sumps: Sump[]
  fluids: Fluid[]
  waters: Water[]
  entries: Entry[]
  /** How often anything was written. */
  writes: number
}

export function memoryBook(start: {
  units?: 'us' | 'metric' | 'imperial'
  timeZone?: string
  sumps?: Sump[]
  fluids?: Fluid[]
  waters?: Water[]
}): MemoryBook {
  const { units = 'metric', timeZone = 'Europe/Berlin', sumps = [], fluids = [], waters = [] } = start
  const bodies = new Map<string, string>()
  const book: MemoryBook = {
    shop: { timeZone, units },
    sumps: [...sumps],
    fluids: [...fluids],
    waters: [...waters],
    entries: [],
    writes: 0,
    bodies: async (ids) => new Map(ids.flatMap((id) => (bodies.has(id) ? [[id, bodies.get(id)!]] : []))),
    withdrawn: async (ids) => {
      const targets = new Set(book.entries.flatMap((one) => (one.kind === 'void' ? [one.entry] : [])))
      return new Set(ids.filter((id) => targets.has(id)))
    },
    addThing: async (kind, thing) => {
      book.writes += 1
      const parsed = thingKinds[kind].schema.parse(thing)
      if (kind === 'sump') book.sumps.push(parsed as Sump)
      if (kind === 'fluid') book.fluids.push(parsed as Fluid)
      if (kind === 'water') book.waters.push(parsed as Water)
    },
    append: async (entries) => {
      book.writes += 1
      for (const one of entries) {
        entry.parse(one)
        if (bodies.has(one.id)) throw new Error(`another entry under ${one.id}`)
        bodies.set(one.id, canonicalJson(one))
        book.entries.push(one)
      }
    },
  }
  return book
}
