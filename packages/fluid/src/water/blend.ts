import type { Litres, MgPerLitre } from '../quantities.ts'
import type { PourableWater } from '../recipe/recipe.ts'
import { OutOfRange, requireRange } from '../require.ts'
import { cheapestShares, conflictOf, leastFuss } from './blend-program.ts'
import type { LimitRow } from './shares-program.ts'

/** A water that can be blended. What is not known is left out; it is asked for where a limit needs it. */
export interface BlendWater {
  id: string
  kind?: PourableWater['kind'] | undefined
  hardness?: MgPerLitre | undefined
  chloride?: MgPerLitre | undefined
  sulfate?: MgPerLitre | undefined
  nitrate?: MgPerLitre | undefined
  /** Money a litre; for every water or for none. */
  cost?: number | undefined
}

/** Minerals that limits can be set for. */
export type Mineral = 'hardness' | 'chloride' | 'sulfate' | 'nitrate'
export const minerals: readonly Mineral[] = ['hardness', 'chloride', 'sulfate', 'nitrate']

/** What a water, or a sump, may hold. */
export type MineralLimits = {
  [mineral in Mineral]?: { low?: MgPerLitre | undefined; high?: MgPerLitre | undefined } | undefined
}

export interface BlendQuestion {
  /** 1 to 12, each id once. */
  waters: readonly BlendWater[]
  /** Of the blended water; see {@link makeUpLimits} where a sump's limits are what is known. */
  limits: MineralLimits
  /** To be blended, above 0. */
  volume: Litres
}

/** A limit that stands against others. */
export interface ConflictingLimit {
  mineral: Mineral
  end: 'low' | 'high'
  limit: MgPerLitre
  /** The nearest that these waters come to it while the other limits of the conflict hold. */
  reach: MgPerLitre
}

/** A blend inside all limits, or why there is none. */
export type WaterBlend =
  | {
      outcome: 'blend'
      /** The waters used, in the order given; the fractions add up to 1. */
      parts: { id: string; fraction: number; volume: Litres }[]
      /** Of the blend; null where a water's is unknown. */
      hardness: MgPerLitre | null
      chloride: MgPerLitre | null
      sulfate: MgPerLitre | null
      nitrate: MgPerLitre | null
      /** Of the whole volume; null without costs. */
      cost: number | null
      costPerLitre: number | null
      /** Softened waters, which are never blended in. */
      leftOut: string[]
    }
  /** A smallest set of limits that cannot all hold: without any one of them the others could. */
  | { outcome: 'conflict'; conflict: ConflictingLimit[]; leftOut: string[] }
  /** Only softened water is there. */
  | { outcome: 'only-softened'; leftOut: string[] }

/**
 * How much of which water makes a volume inside limits: a linear program over the fractions,
 *
 *     least Σ cost · fraction,      Σ fraction = 1,      low ≤ Σ mineral · fraction ≤ high for each mineral
 *
 * Where no costs are given and the hardness has no band with two ends to aim into, as little as possible of the purer waters is taken,
 * since purifying costs money: the kind tells which is purer (deionised, then reverse osmosis, then all others), without kinds
 * the minerals that are known of every water. Of equally cheap blends the one with least fuss is taken: the fewest waters; then the hardness nearest the
 * middle of its band, or the lowest where it has no band; then the waters named first. The same question has the same answer.
 *
 * Softened water is left out: its hardness is gone, its sodium and the salt's chloride are not, and they build up in the sump.
 *
 * Minerals blend in proportion to volume. Analyses drift: taps by season, exchangers as they run out.
 *
 * @throws {RangeError} a quantity outside the range its field gives, a mineral that is limited but unknown in a water, costs for some waters only
 * @example blendWaters({ waters: [{ id: 'tap', hardness: 300 }, { id: 'ro', hardness: 10 }], limits: { hardness: { high: 155 } }, volume: 100 }) // half and half
 */
export function blendWaters(question: BlendQuestion): WaterBlend {
  requireQuestion(question)
  const { waters, limits, volume } = question
  const usable = waters.filter(({ kind }) => kind !== 'softened')
  const leftOut = waters.filter(({ kind }) => kind === 'softened').map(({ id }) => id)
  if (usable.length === 0) return { outcome: 'only-softened', leftOut }

  const rows = rowsOf(usable, limits)
  const costs = costsOf(usable, limits)
  const cheapest = cheapestShares(rows, costs)
  if (cheapest === null) {
    const conflict = conflictOf(rows).map(({ row: { mineral, end, limit }, reach }) => ({ mineral, end, limit, reach }))
    return { outcome: 'conflict', conflict, leftOut }
  }
  const fractions = leastFuss({ rows, costs, cheapest, hardness: hardnessGoal(usable, limits) })
  const of = (value: (water: BlendWater) => number | undefined) => blendOf(usable.map(value), fractions)
  const costPerLitre = of(({ cost }) => cost)
  return {
    outcome: 'blend',
    parts: usable
      .map(({ id }, index) => ({ id, fraction: fractions[index]!, volume: fractions[index]! * volume }))
      .filter(({ fraction }) => fraction > 0),
    hardness: of((water) => water.hardness),
    chloride: of((water) => water.chloride),
    sulfate: of((water) => water.sulfate),
    nitrate: of((water) => water.nitrate),
    cost: costPerLitre === null ? null : costPerLitre * volume,
    costPerLitre,
    leftOut,
  }
}

function costsOf(waters: readonly BlendWater[], { hardness }: MineralLimits): number[] {
  if (waters.every(({ cost }) => cost !== undefined)) return waters.map(({ cost }) => cost!)
  const hasMiddle = hardness?.low !== undefined && hardness.high !== undefined
  return hasMiddle ? waters.map(() => 0) : purities(waters)
}

/** What stands for the costs where nobody gave any: how pure a water is, from 0 for the least pure of them. */
function purities(waters: readonly BlendWater[]): number[] {
  if (waters.every(({ kind }) => kind !== undefined)) return waters.map(({ kind }) => purityOfKind[kind!] ?? 0)
  const known = minerals.filter((mineral) => waters.every((water) => water[mineral] !== undefined))
  const loads = waters.map((water) => known.reduce((sum, mineral) => sum + water[mineral]!, 0))
  const most = Math.max(...loads)
  return loads.map((load) => most - load)
}

const purityOfKind: Partial<Record<NonNullable<BlendWater['kind']>, number>> = { 'reverse-osmosis': 1, deionised: 2 }

/** What a sump may hold, and how many times richer than its top-ups it becomes. */
export interface SumpLimits {
  sumpLimits: MineralLimits
  /** 1 or more. */
  cycles: number
}

/**
 * What the water of a sump's top-ups may hold, so that the sump stays within its own limits once it has come to balance:
 *
 *     limit of the water = limit of the sump / cycles
 *
 * Taken for top-ups of water alone; a top-up of strength x brings (1 − x/100) times that, so the limits err on the safe side.
 *
 * Source: mass balance, as in `balance`.
 *
 * @throws {RangeError} fewer cycles than 1, a limit below 0
 * @example makeUpLimits({ sumpLimits: { hardness: { high: 400 } }, cycles: 4 }) // { hardness: { high: 100 } }
 */
export function makeUpLimits({ sumpLimits, cycles }: SumpLimits): MineralLimits {
  requireRange('cycles', cycles, { min: 1 })
  requireLimits('sumpLimits', sumpLimits)
  const scaled = minerals.flatMap((mineral) => {
    const limit = sumpLimits[mineral]
    if (limit === undefined) return []
    const ends = (['low', 'high'] as const).flatMap((end) => {
      const value = limit[end]
      return value === undefined ? [] : [[end, value / cycles] as const]
    })
    return [[mineral, Object.fromEntries(ends)] as const]
  })
  return Object.fromEntries(scaled)
}

function rowsOf(waters: readonly BlendWater[], limits: MineralLimits): (LimitRow & { mineral: Mineral })[] {
  return minerals.flatMap((mineral) =>
    (['low', 'high'] as const).flatMap((end) => {
      const limit = limits[mineral]?.[end]
      return limit === undefined ? [] : [{ mineral, end, limit, values: waters.map((water) => water[mineral]!) }]
    }),
  )
}

/** What the hardness is to be near; null where it is unknown. */
function hardnessGoal(waters: readonly BlendWater[], { hardness: { low, high } = {} }: MineralLimits) {
  const values = waters.map(({ hardness }) => hardness)
  if (values.some((value) => value === undefined)) return null
  return { values: values as number[], near: low === undefined || high === undefined ? 0 : (low + high) / 2 }
}

function blendOf(values: readonly (number | undefined)[], fractions: readonly number[]): number | null {
  let total = 0
  for (const [index, value] of values.entries()) {
    if (fractions[index] === 0) continue
    if (value === undefined) return null
    total += value * fractions[index]!
  }
  return total
}

function requireQuestion({ waters, limits, volume }: BlendQuestion): void {
  requireRange('volume', volume, { above: 0 })
  requireRange('waters', waters.length, { min: 1, max: 12 })
  requireLimits('limits', limits)
  const priced = waters.filter(({ cost }) => cost !== undefined).length
  for (const [index, water] of waters.entries()) {
    if (waters.findIndex(({ id }) => id === water.id) < index)
      throw new OutOfRange(`waters.${index}.id`, index, 'each id once')
    for (const mineral of minerals) {
      const limited = limits[mineral]?.low !== undefined || limits[mineral]?.high !== undefined
      if (water[mineral] === undefined && !limited) continue
      requireRange(`waters.${index}.${mineral}`, water[mineral] ?? Number.NaN, { min: 0, max: 1e5 })
    }
    if (priced > 0) requireRange(`waters.${index}.cost`, water.cost ?? Number.NaN, { min: 0, max: 1e6 })
  }
}

function requireLimits(name: string, limits: MineralLimits): void {
  for (const mineral of minerals) {
    const { low, high } = limits[mineral] ?? {}
    if (low !== undefined) requireRange(`${name}.${mineral}.low`, low, { min: 0, max: 1e5 })
    if (high !== undefined) requireRange(`${name}.${mineral}.high`, high, { min: low ?? 0, max: 1e5 })
  }
}
