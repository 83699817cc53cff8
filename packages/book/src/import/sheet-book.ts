import type { Entry } from '../schema/entries/index.ts'
import type { Fluid, Sump, ThingKind, Water } from '../schema/things/index.ts'

/** What the reading of a sheet asks of the book, and what it hands over to be written. */
export interface SheetBook {
  shop: { timeZone: string; units: 'us' | 'metric' | 'imperial' }
  sumps: readonly Sump[]
  fluids: readonly Fluid[]
  waters: readonly Water[]
  /** Canonical JSON (RFC 8785) of the entries that already stand under these ids; ids without one are left out. */
  bodies(ids: readonly string[]): Promise<Map<string, string>>
  /** Which of these entries are withdrawn by a void that stands. */
  withdrawn(ids: readonly string[]): Promise<Set<string>>
  /** New things, before the entries that name them. */
  addThing(kind: ThingKind, thing: Record<string, unknown>): Promise<void>
  /** New entries, in order. Only called where the whole sheet is free of faults and of open questions. */
  append(entries: readonly Entry[]): Promise<void>
}
