import { withdrawnBy } from '../journal/withdrawn.ts'
import type { JournalReader } from '../store/store.ts'

/** Something was written about a sump. */
export interface Touch {
  sump: string
  /** Milliseconds since 1970-01-01 UTC. */
  ms: number
}

/** What was poured or taken out ends what was before; what was read does not. */
const pours = ['charge', 'addition', 'drawoff', 'cleanout']

/** When sumps were written about after `from`, each moment of a sump once, and when each was poured into since `since`. */
export async function touchedBetween(
  journal: JournalReader,
  { since, from, until }: { since: number; from: number; until: number },
): Promise<{ touches: Touch[]; pouredAt: Map<string, number[]> }> {
  const [entries, voids] = await Promise.all([
    journal.entries({ order: 'time', since: text(since), until: text(until) }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const touches = new Map<string, Touch>()
  const pouredAt = new Map<string, number[]>()
  for (const { id, sump, kind, at } of entries) {
    if (sump === null || withdrawn.has(id)) continue
    const ms = Date.parse(at)
    if (pours.includes(kind)) pouredAt.set(sump, [...(pouredAt.get(sump) ?? []), ms])
    if (ms > from) touches.set(`${ms} ${sump}`, { sump, ms })
  }
  return { touches: [...touches.values()], pouredAt }
}

const text = (ms: number) => new Date(ms).toISOString()
