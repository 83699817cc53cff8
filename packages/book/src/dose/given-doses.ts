import type { DoseUnit } from '@sumpbook/fluid'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { Additive } from '../schema/things/additive.ts'
import type { JournalReader } from '../store/store.ts'

/** A dose as the journal has it. */
export interface DoseEntry {
  entry: string
  sump: string
  /** Milliseconds since 1970-01-01 UTC. */
  ms: number
  by: string | null
  /** The id or the name it was written down under. */
  id: string | null
  name: string | null
  litres: number | null
  grams: number | null
}

/** Doses of all additives, oldest first, and when sumps were charged. */
export async function givenDoses(
  journal: JournalReader,
  query: { sump?: string; since?: string; until: string },
): Promise<{ doses: DoseEntry[]; chargedAt: Map<string, number[]> }> {
  const [entries, voids] = await Promise.all([
    journal.entries({ ...query, kinds: ['addition', 'charge'], order: 'time' }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const doses: DoseEntry[] = []
  const chargedAt = new Map<string, number[]>()
  for (const { id, at, kind, sump, body } of entries) {
    if (sump === null || withdrawn.has(id)) continue
    const ms = Date.parse(at)
    if (kind === 'charge') chargedAt.set(sump, [...(chargedAt.get(sump) ?? []), ms])
    else if (body.includes('"additive"')) {
      const { additive, by = null } = JSON.parse(body) as EntryOf<'addition'>
      if (additive === undefined) continue
      doses.push({
        ...{ entry: id, sump, ms, by, id: additive.id ?? null, name: additive.name ?? null },
        ...{ litres: additive.litres ?? null, grams: additive.grams ?? null },
      })
    }
  }
  return { doses, chargedAt }
}

/** Whether a dose is of an additive: by its id, else by its name without regard to capitals. */
export const isOf = ({ id, name }: DoseEntry, additive: Additive): boolean =>
  id === null ? name?.trim().toLowerCase() === additive.name.trim().toLowerCase() : id === additive.id

/** In millilitres or grams; null where it was not measured, or measured as the other. */
export const amountOf = ({ litres, grams }: DoseEntry, unit: DoseUnit): number | null =>
  unit === 'g' ? grams : litres === null ? null : 1000 * litres
