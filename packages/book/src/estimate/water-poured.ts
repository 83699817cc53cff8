import type { PouredWater } from '@sumpbook/fluid'
import type { EntryOf } from '../schema/entries/index.ts'
import type { Things } from '../setup/things.ts'
import { amountOf } from './amounts.ts'
import type { Translation, WaterMemory } from './translation.ts'

const unknown: PouredWater = { hardness: null, chloride: null }

/** What a water brings when it is poured: its last analysis, unless the water itself was told otherwise since. */
export function waterPoured(water: unknown, things: Things, { waters }: Translation): PouredWater {
  if (typeof water !== 'string') return unknown
  const told = things.water.get(water)
  const memory = waters.get(water)
  return {
    hardness: youngest(memory?.hardness, told?.hardness ?? null),
    chloride: youngest(memory?.chloride, told?.chloride ?? null),
  }
}

function youngest(analysed: WaterMemory['hardness'] | undefined, told: number | null): number | null {
  return analysed != null && analysed.said === told ? analysed.found : told
}

/** From here on the water is what was found. */
export function rememberAnalysis(entry: EntryOf<'analysis'>, things: Things, { waters }: Translation): void {
  const { kind, id } = entry.about
  if (kind !== 'water' || typeof id !== 'string') return
  const told = things.water.get(id)
  const before = waters.get(id)
  const [hardness, chloride] = [amountOf(entry.hardness), amountOf(entry.chloride)]
  waters.set(id, {
    hardness: hardness === null ? (before?.hardness ?? null) : { found: hardness, said: told?.hardness ?? null },
    chloride: chloride === null ? (before?.chloride ?? null) : { found: chloride, said: told?.chloride ?? null },
  })
}
