import type { ThingHistory, Things } from '../setup/things.ts'

/** Things as far as an estimate depends on them, each as text that differs where they do. */
type Seen = ReadonlyMap<string, string>

const seen = new WeakMap<Things, Seen>()

/** A time from which two histories of a shop's things differ for the estimate, and whether by sumps alone that only the younger has. */
export interface Difference {
  /** UTC text; '' for the beginning of time. */
  since: string
  /** The sumps that are new; null where anything else differs. */
  newSumps: string[] | null
}

/** From when on two histories differ, the earliest first; nothing but new sumps before the last of them. */
export function differencesOf(before: ThingHistory, after: ThingHistory): Difference[] {
  const instants = ['', ...new Set([...before.changes, ...after.changes].sort())]
  const found: Difference[] = []
  for (const since of instants) {
    const [old, young] = [seenOf(before.at(since)), seenOf(after.at(since))]
    const keys = [...new Set([...old.keys(), ...young.keys()])].filter((key) => old.get(key) !== young.get(key))
    if (keys.length === 0) continue
    if (!keys.every((key) => key.startsWith('sump/') && !old.has(key))) return [...found, { since, newSumps: null }]
    found.push({ since, newSumps: keys.map((key) => key.slice('sump/'.length)) })
  }
  return found
}

function seenOf(things: Things): Seen {
  const known = seen.get(things)
  if (known !== undefined) return known
  const { fluid, water, sump, meter, instrument } = things
  const fresh = new Map<string, string>()
  const note = (kind: string, id: string, fields: unknown[]) => fresh.set(`${kind}/${id}`, JSON.stringify(fields))
  for (const { id, brixFactor, brixChart, factors, limits, class: kind } of fluid.values()) {
    note('fluid', id, [brixFactor, brixChart, factors, limits?.concentration, kind])
  }
  for (const { id, hardness, chloride } of water.values()) note('water', id, [hardness, chloride])
  for (const { id, litresPerCount } of meter.values()) note('meter', id, [litresPerCount])
  for (const { id, resolution } of instrument.values()) note('instrument', id, [resolution])
  for (const { id, kind, fluid: of, fillVolume, capacity, minVolume, holdUp, dipTable, limits } of sump.values()) {
    note('sump', id, [kind, of, fillVolume, capacity, minVolume, holdUp, dipTable, limits?.concentration])
  }
  seen.set(things, fresh)
  return fresh
}
