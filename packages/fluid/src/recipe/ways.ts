import type { Litres, Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { makePour, outcomeOf, type Standing } from './mix.ts'
import type { Outcome, PourableWater, SumpToPour } from './recipe.ts'
import { systemOf } from './system.ts'

/** What stands ready to be poured, besides water. */
export interface OnHand {
  /** Mix made already, in a tank or on a cart. */
  premixes?: readonly { id: string; strength: Percent; volume: Litres }[]
  /** Strengths the mixer's dial has settings for. */
  mixerStrengths?: readonly Percent[]
  /** Whether mix may be made in buckets, of concentrate and water, at any strength up to `strongest`. */
  buckets?: boolean
  /** The strongest mix that is poured. */
  strongest?: Percent
  /** The leanest mix the fluid's sheet allows; 0 allows plain water. */
  leanest?: Percent
  waters?: readonly PourableWater[]
}

/** One of the liquids of a way, in the order in which they are poured. */
export interface Part {
  kind: 'water' | 'premix' | 'mixer' | 'bucket-mix'
  /** The premix's id; null for the others. */
  id: string | null
  volume: Litres
  strength: Percent
}

/** One way to fill a sump, with what comes of it. */
export interface Way {
  parts: Part[]
  result: Outcome
  /** Whether it lands in the band. */
  inBand: boolean
  /** How far it lands from the target, percent. */
  offTarget: Percent
  /** Different liquids to fetch: 1 where one hose does it. */
  fuss: number
}

/** A way that misses the target by less than this is as good as one that meets it: a refractometer cannot tell. */
const asGood = 0.2

/**
 * The ways to bring a sump to its mark with what the shop has ready: one premix, one setting of the mixer, plain water,
 * any two of them together, or a mix made in buckets. Least fuss first: those that land in the band before those that
 * do not, then those within 0.2 % of the target, then fewer liquids, then nearer to the target.
 *
 * Two liquids of strengths s₁ < s₂ that shall make the strength s wanted take the shares (s₂ − s) / (s₂ − s₁) and
 * (s − s₁) / (s₂ − s₁) of the fill (alligation). Every way fills exactly to the mark and lies between sump and pour.
 *
 * Source: conservation of concentrate, volumes taken as additive.
 *
 * @returns best first; empty where the sump is at its mark or above it
 * @throws {RangeError} a quantity outside the range its type gives
 */
export function pourWays(sump: SumpToPour, onHand: OnHand): Way[] {
  const { strongest = 20, leanest = 0 } = onHand
  const standing = systemOf(sump)
  const { fillVolume: mark, target, band } = sump
  requireRange('target', target, { min: 0, max: 100 })
  const room = mark - standing.volume
  if (!(room > 0)) return []
  const wanted = (target * mark - standing.concentration * standing.volume) / room
  const liquids = liquidsOf(onHand, { leanest, strongest })
  const single = liquids.filter(({ most }) => most >= room).map((liquid) => [part(liquid, room)])
  const double = pairsOf(liquids).flatMap(([a, b]) => mixOfTwo(a, b, { room, wanted }))
  const bucket = onHand.buckets === true && wanted > leanest && wanted <= strongest ? [[bucketPart(room, wanted)]] : []
  return [...single, ...double, ...bucket]
    .map((parts) =>
      wayOf(parts, standing, onHand.waters ?? [], { target, low: band?.low ?? 0, high: band?.high ?? 100 }),
    )
    .sort(byFuss)
}

interface Liquid {
  kind: Part['kind']
  id: string | null
  strength: Percent
  /** Litres there are of it. */
  most: Litres
}

/** Everything that may be poured by itself: nothing stronger than the strongest, nothing leaner than the leanest. */
function liquidsOf(onHand: OnHand, { leanest, strongest }: { leanest: Percent; strongest: Percent }): Liquid[] {
  const { premixes = [], mixerStrengths = [], waters = [] } = onHand
  const usable = waters.length === 0 || waters.some(({ kind }) => kind !== 'softened')
  const endless = Number.POSITIVE_INFINITY
  const all: Liquid[] = [
    ...(usable ? [{ kind: 'water' as const, id: null, strength: 0, most: endless }] : []),
    ...premixes.map(({ id, strength, volume }) => ({ kind: 'premix' as const, id, strength, most: volume })),
    ...mixerStrengths.map((strength) => ({ kind: 'mixer' as const, id: null, strength, most: endless })),
  ]
  return all.filter(({ strength }) => strength >= leanest && strength <= strongest)
}

function pairsOf(liquids: readonly Liquid[]): [Liquid, Liquid][] {
  return liquids.flatMap((a, i) =>
    liquids.slice(i + 1).map((b): [Liquid, Liquid] => (a.strength <= b.strength ? [a, b] : [b, a])),
  )
}

/** The leaner first, the stronger into it; empty where the two cannot make the strength, or there is too little of one. */
function mixOfTwo(leaner: Liquid, stronger: Liquid, { room, wanted }: { room: Litres; wanted: Percent }): Part[][] {
  if (!(wanted > leaner.strength && wanted < stronger.strength)) return []
  const share = (wanted - leaner.strength) / (stronger.strength - leaner.strength)
  const [first, second] = [room * (1 - share), room * share]
  if (first > leaner.most || second > stronger.most) return []
  return [[part(leaner, first), part(stronger, second)]]
}

const part = ({ kind, id, strength }: Liquid, volume: Litres): Part => ({ kind, id, volume, strength })
const bucketPart = (volume: Litres, strength: Percent): Part => ({ kind: 'bucket-mix', id: null, volume, strength })

function wayOf(
  parts: Part[],
  standing: Standing,
  waters: readonly PourableWater[],
  { target, low, high }: { target: Percent; low: Percent; high: Percent },
): Way {
  const volume = parts.reduce((sum, one) => sum + one.volume, 0)
  const concentrate = parts.reduce((sum, one) => sum + (one.volume * one.strength) / 100, 0)
  const result = outcomeOf(standing, 0, makePour(volume, (100 * concentrate) / volume, waters))
  return {
    parts,
    result,
    inBand: result.concentration >= low - 1e-9 && result.concentration <= high + 1e-9,
    offTarget: Math.abs(result.concentration - target),
    fuss: parts.reduce((sum, { kind }) => sum + (kind === 'bucket-mix' ? 2 : 1), 0),
  }
}

function byFuss(a: Way, b: Way): number {
  return (
    Number(b.inBand) - Number(a.inBand) ||
    Number(b.offTarget <= asGood) - Number(a.offTarget <= asGood) ||
    a.fuss - b.fuss ||
    a.offTarget - b.offTarget
  )
}
