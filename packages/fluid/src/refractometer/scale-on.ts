import type { ProductChart } from './product-chart.ts'

/** What is known of how a fluid turns °Brix into percent. */
export interface KnownScales {
  /** Percent per °Brix. */
  brixFactor?: number | undefined
  /** Wins over every factor. */
  brixChart?: ProductChart | undefined
  /** Measured anew: from a day on (`2026-03-01`), of a lot, or both. */
  factors?: readonly DatedFactor[] | undefined
}

export interface DatedFactor {
  from?: string | undefined
  lot?: string | undefined
  brixFactor: number
}

/** A chart, or a factor in percent per °Brix. */
export type ScaleInUse = { chart: ProductChart } | { factor: number }

/**
 * The scale that holds on a calendar day of the shop: the product's chart; else the factor of the lot in the sump where one
 * was measured, else the youngest of the product that had begun, else the fluid's own. Null where none is known.
 *
 * @param day `2026-03-01`, in the shop's time zone
 * @param lot of the charge in the sump; null where nobody said
 */
export function scaleOn(
  { brixFactor, brixChart, factors = [] }: KnownScales,
  day: string,
  lot: string | null = null,
): ScaleInUse | null {
  if (brixChart !== undefined) return { chart: brixChart }
  const begun = factors.filter(({ from }) => from === undefined || from <= day)
  const ofLot = begun.filter((factor) => lot !== null && factor.lot === lot)
  const candidates = ofLot.length > 0 ? ofLot : begun.filter((factor) => factor.lot === undefined)
  const youngest = candidates.toSorted((a, b) => ((a.from ?? '') < (b.from ?? '') ? -1 : 1)).at(-1)
  const factor = youngest?.brixFactor ?? brixFactor
  return factor === undefined ? null : { factor }
}
