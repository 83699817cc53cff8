import { quantile95 } from '../interval90.ts'
import type { Litres, MgPerLitre, Percent, Sd } from '../quantities.ts'
import type { Outcome, Pour, PourableWater, Reason } from './recipe.ts'

/** All the fluid of a system, lines included, with its doubt. */
export interface Standing {
  volume: Litres
  concentration: Percent
  volumeSd: Sd
  concentrationSd: Sd
  hardness: MgPerLitre | null
}

/** A pour of `volume` litres at `strength` percent, made with the water that suits a top-up. */
export function makePour(volume: Litres, strength: Percent, waters: readonly PourableWater[] = []): Pour {
  const concentrate = (volume * strength) / 100
  const water = volume - concentrate
  const chosen = topUpWater(waters)
  const waterHardness = strength === 100 ? 0 : (chosen?.hardness ?? null)
  return {
    volume,
    strength,
    concentrate,
    water,
    waters: chosen === null ? [] : [{ id: chosen.id, volume: water }],
    hardness: waterHardness === null ? null : waterHardness * (1 - strength / 100),
  }
}

/**
 * The water for a top-up: the one with the fewest minerals, since evaporation leaves them all behind. Softened
 * water is never chosen (its sodium and chloride stay); a water without an analysis is taken for its kind.
 */
export function topUpWater(waters: readonly PourableWater[]): PourableWater | null {
  const usable = waters.filter(({ kind }) => kind !== 'softened')
  return usable.reduce<PourableWater | null>(
    (best, water) => (best === null || minerals(water) < minerals(best) ? water : best),
    null,
  )
}

/** Whether waters are named, but none of them may be poured as a routine top-up. */
export function waterReasons(waters: readonly PourableWater[]): Reason[] {
  return waters.length > 0 && topUpWater(waters) === null ? ['only-softened-water'] : []
}

/**
 * Where a sump stands after `drawOff` litres were taken out at its own concentration and `pour` went in:
 *
 *     concentration′ = (concentration × (volume − drawOff) + strength × pour) / (volume − drawOff + pour)
 *
 * and the hardness likewise, a pour bringing that of its water thinned by its concentrate. The doubts of concentration and volume are carried through to first order; the interval never leaves what lies
 * between nothing and 100 %.
 *
 * Source: conservation of concentrate, volumes taken as additive; GUM (JCGM 100:2008) §5.1.2 for the doubt.
 */
export function outcomeOf(sump: Standing, drawOff: Litres, pour: Pour | null): Outcome {
  const kept = sump.volume - drawOff
  const added = pour?.volume ?? 0
  const volume = kept + added
  const strength = pour?.strength ?? 0
  const concentration = volume === 0 ? sump.concentration : (sump.concentration * kept + strength * added) / volume
  const share = volume === 0 ? 1 : kept / volume
  const byVolume = volume === 0 ? 0 : (sump.concentration - concentration) / volume
  const sd = Math.hypot(share * sump.concentrationSd, byVolume * sump.volumeSd)
  return {
    volume,
    concentration,
    low90: Math.max(0, concentration - quantile95 * sd),
    high90: Math.min(100, concentration + quantile95 * sd),
    hardness: mixedHardness(sump.hardness, kept, pour),
  }
}

function mixedHardness(own: MgPerLitre | null, kept: Litres, pour: Pour | null): MgPerLitre | null {
  if (pour === null || pour.volume === 0) return own
  if (pour.hardness === null || (own === null && kept > 0)) return null
  return ((own ?? 0) * kept + pour.hardness * pour.volume) / (kept + pour.volume)
}

/** Hardness, or for a water nobody analysed the order in which its kind is usually poor in minerals. */
function minerals({ hardness, kind }: PourableWater): number {
  if (hardness !== undefined) return hardness
  if (kind === 'deionised') return 1
  if (kind === 'reverse-osmosis') return 10
  return 1000
}
