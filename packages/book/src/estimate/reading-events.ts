import { type Reported, type ScaleInUse, type ShopEvent, scaleOn, usualResolution, volumeAt } from '@sumpbook/fluid'
import type { Reading } from '../schema/entries/index.ts'
import type { Fluid, Sump } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'
import { amountOf } from './amounts.ts'
import type { Placed } from './placed.ts'
import { dayText } from './shop-clock.ts'
import type { SumpMemory, Translation } from './translation.ts'

type ReadingEvent = Extract<ShopEvent, { kind: 'reading' }>

/** A reading in canonical units, level through the dip table of its day; null where it says nothing of the balance. */
export function readingOf(
  entry: Reading,
  { id, at }: Placed,
  things: Things,
  { sumps }: Translation,
): ReadingEvent | null {
  const sump = things.sump.get(entry.sump)
  const brix = reportedOf(entry.brix)
  const titration = reportedOf(entry.titration)
  const hardness = reportedOf(entry.hardness)
  const chloride = reportedOf(entry.chloride)
  const conductivity = figureOf(entry.conductivity)
  const seen = sump === undefined ? null : seenOf(entry, sump)
  const found = [brix, titration, hardness, chloride, conductivity, seen]
  if (found.every((value) => value === null)) return null
  return {
    kind: 'reading',
    id,
    at,
    sump: entry.sump,
    brix,
    scales: scalesOn(Math.floor(at), things, sumps.get(entry.sump)?.charge ?? null),
    resolution: things.instrument.get(entry.instrument ?? '')?.resolution ?? usualResolution,
    instrument: entry.instrument ?? null,
    titration,
    hardness,
    chloride,
    conductivity,
    seen,
    pumps: entry.pumps === 'running' ? 'running' : 'stopped',
  }
}

/** A figure or a class of figures, as far as it can be one. */
function reportedOf(value: unknown): Reported | null {
  if (typeof value !== 'object' || value === null) return amountOf(value)
  const { low, high, below, atLeast } = value as Record<string, unknown>
  if (amountOf(below) !== null) return { below: amountOf(below)! }
  if (amountOf(atLeast) !== null) return { atLeast: amountOf(atLeast)! }
  const [from, to] = [amountOf(low), amountOf(high)]
  return from !== null && to !== null && from < to ? { low: from, high: to } : null
}

/** The middle of a class with two ends; one with one end says too little. */
function figureOf(value: unknown): number | null {
  const reported = reportedOf(value)
  if (reported === null || typeof reported === 'number') return reported
  return 'low' in reported ? (reported.low + reported.high) / 2 : null
}

function seenOf(entry: Pick<Reading, 'volume' | 'level'>, { dipTable }: Sump): number | null {
  const volume = figureOf(entry.volume)
  if (volume !== null) return volume
  const level = figureOf(entry.level)
  if (level === null || dipTable === undefined || !(dipTable.at(-1)![1] > dipTable[0]![1])) return null
  const at = volumeAt(dipTable, level)
  return at.outcome === 'volume' ? at.volume : null
}

interface KnownScales {
  /** Whether any fluid's factor depends on day or lot. */
  dated: boolean
  maps: Map<string, ReadonlyMap<string, ScaleInUse>>
}

/** Scales that were worked out once, for as long as things stay as they are. */
const known = new WeakMap<Things, KnownScales>()

/** How °Brix becomes percent on a day, for every fluid of the shop; a lot's own factor counts for the fluid it is of. */
export function scalesOn(day: number, things: Things, charge: SumpMemory['charge']): ReadonlyMap<string, ScaleInUse> {
  const { dated, maps } = knownOf(things)
  const key = dated ? JSON.stringify([day, charge?.fluid ?? '', charge?.lot ?? null]) : ''
  const there = maps.get(key)
  if (there !== undefined) return there
  const scales = new Map<string, ScaleInUse>()
  for (const [id, fluid] of things.fluid) {
    const scale = scaleOn(soundScales(fluid), dayText(day), id === charge?.fluid ? charge.lot : null)
    if (scale !== null) scales.set(id, scale)
  }
  maps.set(key, scales)
  return scales
}

function knownOf(things: Things): KnownScales {
  const there = known.get(things)
  if (there !== undefined) return there
  const dated = [...things.fluid.values()].some(({ factors = [] }) => factors.length > 0)
  const fresh = { dated, maps: new Map() }
  known.set(things, fresh)
  return fresh
}

/** A chart whose percent does not rise with its °Brix cannot be read backwards: the factor has to do. */
function soundScales({ brixFactor, brixChart, factors }: Fluid) {
  const rises = brixChart?.every(([, percent], i) => i === 0 || percent > brixChart[i - 1]![1]) === true
  return { brixFactor, factors, ...(rises ? { brixChart } : {}) }
}
