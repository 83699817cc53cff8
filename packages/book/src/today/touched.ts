import { withdrawnBy } from '../journal/withdrawn.ts'
import type { JournalReader } from '../store/store.ts'

/** What was written about a sump in a time. */
export interface Touched {
  /** The first of it, milliseconds since 1970-01-01 UTC. */
  firstAt: number
  /** Something was done beside one first reading: poured, read again, put off … */
  isActedOn: boolean
}

/** What was poured or taken out ends what was before; what was read does not. */
const pours = ['charge', 'addition', 'drawoff', 'cleanout']

/** Sumps that were written about from one instant to another, and when each was poured into. */
export async function touchedBetween(
  journal: JournalReader,
  { since, from, until }: { since: number; from: number; until: number },
): Promise<{ touched: Map<string, Touched>; pouredAt: Map<string, number[]> }> {
  const [entries, voids] = await Promise.all([
    journal.entries({ order: 'time', since: text(since), until: text(until) }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const touched = new Map<string, Touched>()
  const pouredAt = new Map<string, number[]>()
  for (const { id, sump, kind, at } of entries) {
    if (sump === null || withdrawn.has(id)) continue
    const ms = Date.parse(at)
    if (pours.includes(kind)) pouredAt.set(sump, [...(pouredAt.get(sump) ?? []), ms])
    if (ms <= from) continue
    const known = touched.get(sump)
    touched.set(
      sump,
      known === undefined
        ? { firstAt: ms, isActedOn: kind !== 'reading' && kind !== 'observation' }
        : { ...known, isActedOn: known.isActedOn || ms > known.firstAt || pours.includes(kind) },
    )
  }
  return { touched, pouredAt }
}

const text = (ms: number) => new Date(ms).toISOString()
