import type { Crossing } from '../answer-types.ts'
import { above } from './mixture.ts'
import type { Untouched } from './untouched.ts'

/** The limits that are watched; what is missing is not. */
export interface WatchedLimits {
  concentration?: { low?: number | undefined; high?: number | undefined } | undefined
  /** Litres, the pumps' suction. */
  volumeLow?: number | undefined
  hardnessHigh?: number | undefined
  chlorideHigh?: number | undefined
}

/** Days ahead at which the probabilities are worked out; between them they run straight. */
const lookedAt = [0, 1, 2, 3, 4, 5, 7, 9, 12, 15, 19, 24, 30, 36, 42]
/** How far ahead crossings are looked for, in days. */
export const crossingHorizon = lookedAt.at(-1)!
/** A crossing less likely than this is none. */
const leastLikely = 0.05

/**
 * Which limit is likeliest to be crossed first if nothing is poured or drawn, and when. Concentration and minerals only rise
 * and the level only falls meanwhile, so that the probability of having crossed by a day is that of being beyond on it.
 * A limit that is likely crossed already is named only where none is left to be crossed, as crossed now.
 */
export function crossingOf(asked: Untouched, limits: WatchedLimits): Crossing | null {
  const { concentration, volumeLow, hardnessHigh, chlorideHigh } = limits
  const watched: Record<Crossing['limit'], number[]> = {
    'concentration.high': [],
    'concentration.low': [],
    'volume.low': [],
    'hardness.high': [],
    'chloride.high': [],
  }
  for (const day of lookedAt) {
    if (hardnessHigh !== undefined || chlorideHigh !== undefined) {
      const { hardness, chloride } = asked.mixAndMineralsIn(day)
      if (hardnessHigh !== undefined) watched['hardness.high'].push(above(hardness, hardnessHigh))
      if (chlorideHigh !== undefined) watched['chloride.high'].push(above(chloride, chlorideHigh))
    }
    const { strength, volume } = asked.mixIn(day)
    if (concentration?.high !== undefined) watched['concentration.high'].push(above(strength, concentration.high))
    if (concentration?.low !== undefined) watched['concentration.low'].push(1 - above(strength, concentration.low))
    if (volumeLow !== undefined) watched['volume.low'].push(1 - above(volume, volumeLow))
  }
  const crossings = Object.entries(watched).flatMap(([limit, beyond]) => {
    const crossing = firstCrossing(limit as Crossing['limit'], beyond)
    return crossing === null ? [] : [crossing]
  })
  const ahead = crossings.filter(({ likely }) => likely > 0)
  const first = (some: readonly Crossing[]) =>
    some.toSorted((a, b) => a.likely - b.likely || b.probability - a.probability)[0]
  return first(ahead) ?? first(crossings) ?? null
}

function firstCrossing(limit: Crossing['limit'], beyond: readonly number[]): Crossing | null {
  const rising: number[] = []
  for (const probability of beyond) rising.push(Math.min(1, Math.max(probability, rising.at(-1) ?? 0)))
  const probability = rising.at(-1) ?? 0
  if (!(probability >= leastLikely)) return null
  if (rising[0]! >= 0.5) return { limit, probability: Math.max(...rising), earliest: 0, likely: 0, latest: 0 }
  const dayAt = (share: number) => dayOf(rising, share * probability)
  return { limit, probability, earliest: dayAt(0.05), likely: dayAt(0.5), latest: dayAt(0.95) }
}

/** The day on which a rising probability reaches a value, straight between days. */
function dayOf(rising: readonly number[], value: number): number {
  const place = rising.findIndex((probability) => probability >= value)
  if (place <= 0) return 0
  const [before, after] = [rising[place - 1]!, rising[place]!]
  const [from, to] = [lookedAt[place - 1]!, lookedAt[place]!]
  return from + (after > before ? ((value - before) / (after - before)) * (to - from) : 0)
}
