import { litresOfMass, type WasteEvent, type WasteNow, wasteNow } from '@sumpbook/fluid'
import type { Logged } from '../journal/entry-log.ts'
import type { WasteContainer } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'
import type { WasteEntry } from './waste-log.ts'

type OfContainer = Extract<WasteEntry, { container: string }>

/** A container, what was written of it, and how it stands. */
export interface ContainerNow {
  container: WasteContainer
  isSetUp: boolean
  now: WasteNow
  entries: Logged<OfContainer>[]
  /** Documents that came after their pickup, by the pickup's id. */
  documents: ReadonlyMap<string, string>
}

/** Every container of the shop, and those that entries name though nobody set them up. */
export function containersNow(
  log: readonly Logged<WasteEntry>[],
  things: Things,
  { today, dayAt }: { today: number; dayAt: (at: string) => number },
): ContainerNow[] {
  const byContainer = new Map<string, Logged<OfContainer>[]>()
  for (const { kept, ...place } of log) {
    if (!('container' in kept)) continue
    const known = byContainer.get(kept.container)
    if (known === undefined) byContainer.set(kept.container, [{ ...place, kept }])
    else known.push({ ...place, kept })
  }
  const strangers = [...byContainer.keys()].filter((id) => !things.waste.has(id)).sort()
  const containers = [...things.waste.values(), ...strangers.map((id) => strangerOf(id, byContainer.get(id) ?? []))]
  return containers.map((container) => {
    const entries = byContainer.get(container.id) ?? []
    const { capacity = null, term = null } = container
    const vessel = { capacity, term: term === null ? null : { ...term, from: term.from ?? ('first' as const) } }
    return {
      container,
      isSetUp: things.waste.has(container.id),
      entries,
      documents: new Map(
        entries.flatMap(({ kept }) => (kept.kind === 'document' ? [[kept.answers, kept.document] as const] : [])),
      ),
      now: wasteNow(
        entries.flatMap((entry) => eventOf(entry, container, dayAt)),
        { vessel, today },
      ),
    }
  })
}

/** A container that only entries know is called as its stream is. */
function strangerOf(id: string, entries: readonly Logged<OfContainer>[]): WasteContainer {
  const stream = entries.findLast(({ kept }) => 'stream' in kept && kept.stream !== null)?.kept
  const name = stream !== undefined && 'stream' in stream ? (stream.stream ?? id) : id
  return { id, name, stream: name }
}

function eventOf(
  { id, at, kept }: Logged<OfContainer>,
  container: WasteContainer,
  dayAt: (at: string) => number,
): WasteEvent[] {
  const on = dayAt(at)
  switch (kept.kind) {
    case 'stored': {
      const litres = litresOf(kept, container)
      return litres === null ? [] : [{ kind: 'stored', on, litres }]
    }
    case 'pickup':
      return [{ kind: 'pickup', on, entry: id, litres: litresOf(kept, container) }]
    case 'level':
      return [{ kind: 'level', on, litres: kept.litres }]
    case 'document':
      return []
  }
}

/** Litres as written, else what the kilograms are at the container's density. */
export function litresOf(
  { litres, kilograms }: { litres: number | null; kilograms: number | null },
  { density }: Pick<WasteContainer, 'density'>,
): number | null {
  if (litres !== null) return litres
  return kilograms === null || density === undefined ? null : litresOfMass(kilograms, density)
}
