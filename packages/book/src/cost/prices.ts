import { entryLog } from '../journal/entry-log.ts'
import type { Costs } from '../schema/things/costs.ts'
import type { Things } from '../setup/things.ts'

/** What a delivery says a litre of its lot cost. */
export interface LotPrice {
  fluid: string
  lot: string
  perLitre: number
}

/** Every delivery of a book that names a lot and a price. */
export const lotPriceLog = entryLog<LotPrice>(['receipt'], (entry) => {
  if (entry.kind !== 'receipt') return null
  const { about, fluid = about.id, lot, pricePerLitre } = entry
  if (fluid === undefined || lot === undefined || pricePerLitre === undefined) return null
  return { fluid, lot, perLitre: pricePerLitre }
})

/** What each lot cost a litre; the youngest delivery that says so. */
export type LotPrices = ReadonlyMap<string, number>

const lotKey = (fluid: string, lot: string) => JSON.stringify([fluid, lot])

export const lotPricesOf = (deliveries: readonly LotPrice[]): LotPrices =>
  new Map(deliveries.map(({ fluid, lot, perLitre }) => [lotKey(fluid, lot), perLitre]))

/** A litre of concentrate: of its lot where that was said, else of its fluid at that time; null where nobody said. */
export function concentratePrice(
  { fluid, lot }: { fluid: string; lot: string | null },
  then: Things,
  lots: LotPrices,
): number | null {
  const ofLot = lot === null ? undefined : lots.get(lotKey(fluid, lot))
  return ofLot ?? then.fluid.get(fluid)?.pricePerLitre ?? null
}

/** A litre of a water at that time; of the shop's only water where the pour did not say which. */
export function waterPrice(water: string | null, then: Things): number | null {
  const only = then.water.size === 1 ? [...then.water.values()][0] : undefined
  return (water === null ? only : then.water.get(water))?.costPerLitre ?? null
}

export const costsAt = (then: Things): Costs => then.shop.costs ?? {}

/** A litre of an additive by its name, without regard to capitals. */
export function additivePrice(name: string | undefined, { additives = [] }: Costs): number | null {
  const wanted = name?.trim().toLowerCase()
  return additives.find((one) => one.name.trim().toLowerCase() === wanted)?.perLitre ?? null
}

/** What a stream costs a litre or a kilogram. */
export function wastePrice(stream: string | null, { wasteStreams = [], wastePerLitre }: Costs) {
  const wanted = stream?.trim().toLowerCase()
  const own = wasteStreams.find((one) => one.stream.trim().toLowerCase() === wanted)
  return { perLitre: own?.perLitre ?? wastePerLitre ?? null, perKilogram: own?.perKilogram ?? null }
}
