import type { useSumps } from '../api/queries.ts'
import type { Thing } from '../api/types.ts'

/** A sump as a thing, from what a recipe needs, where the book's own words for the sump are not at hand. */
export function thingOfSump({
  sump,
  name,
  place,
  order,
  fluid,
  bench,
}: NonNullable<ReturnType<typeof useSumps>['data']>[number]): Thing {
  const known = { place, order, fillVolume: bench.fillVolume, capacity: bench.capacity, minVolume: bench.minVolume }
  return {
    id: sump,
    name,
    fluid: fluid.id,
    ...Object.fromEntries(Object.entries(known).filter(([, value]) => value !== null)),
  }
}
