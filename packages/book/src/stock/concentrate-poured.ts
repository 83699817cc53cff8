import type { Things } from '../setup/things.ts'
import type { Poured } from './stock-log.ts'

/** Concentrate that went into a sump. */
export interface ConcentratePoured {
  fluid: string
  lot: string | null
  /** Null where it was poured unmeasured. */
  litres: number | null
}

/** What has to be remembered from one pour to the next. */
export interface PourMemory {
  /** The fluid of each sump's last charge. */
  charged: Map<string, string>
  /** Each meter's last count. */
  meters: Map<string, number>
}

/**
 * The concentrate of a pour: told as such, or volume × strength; of a straight oil all of it. Water alone has none.
 *
 * @param things as they stood then
 * @param memory goes along, pour by pour in order of time
 * @returns null where none went in, or the book does not know the sump
 */
export function concentratePoured(pour: Poured, things: Things, memory: PourMemory): ConcentratePoured | null {
  const metered = meteredLitres(pour, things, memory)
  const sump = things.sump.get(pour.sump)
  if (sump === undefined) return null
  const fluid = pour.fluid ?? (pour.isCharge ? null : memory.charged.get(pour.sump)) ?? sump.fluid
  if (pour.isCharge) memory.charged.set(pour.sump, fluid)
  const { lot, concentrate, strength, isMix } = pour
  const isNeat = things.fluid.get(fluid)?.class === 'straight-oil'
  if (concentrate !== null) return concentrate === 0 ? null : { fluid, lot, litres: concentrate }
  if (strength === 0 && !isNeat) return null
  const volume = pour.volume ?? metered
  if (volume === 'first-count' || volume === 0 || !isMix) return null
  const share = isNeat ? 100 : strength
  return { fluid, lot, litres: volume === null || share === null ? null : (volume * share) / 100 }
}

/** Litres since the meter's last count; null where there is no meter, or it ran back: exchanged, or set to zero. */
function meteredLitres({ meter }: Poured, things: Things, { meters }: PourMemory): number | null | 'first-count' {
  if (meter === null) return null
  const before = meters.get(meter.id)
  meters.set(meter.id, meter.count)
  if (before === undefined) return 'first-count'
  const perCount = things.meter.get(meter.id)?.litresPerCount
  return perCount === undefined || meter.count < before ? null : (meter.count - before) * perCount
}
