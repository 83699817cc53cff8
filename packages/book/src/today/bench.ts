import { type BenchContainer, type RecipeBench, scaleOn, usualResolution } from '@sumpbook/fluid'
import { dayOf } from '../journal/calendar.ts'
import type { Container, Sump } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'

/** The strongest mix poured where neither the fluid nor a mixer says otherwise. */
export const usualStrongest = 20

/**
 * All that a sump's recipe needs besides what is read at it: fluid, limits, marks, waters, mixer and buckets as they
 * are now. The sump's own limits win over its fluid's; the strongest mix is what the fluid allows and the mixers reach.
 */
export function benchOf(
  sump: Sump,
  { fluid: fluidId, lot }: { fluid: string; lot: string | null },
  things: Things,
  at: string,
): RecipeBench {
  const fluid = things.fluid.get(fluidId)
  const limits = { ...fluid?.limits?.concentration, ...sump.limits?.concentration }
  const scale = fluid === undefined ? null : scaleOn(fluid, dayOf(at, things.shop.timeZone), lot)
  const { low, high } = limits
  const band = low === undefined && high === undefined ? null : { low: low ?? 0, high: high ?? 100 }
  const { strongest, ...shop } = shopBench(things)
  return {
    brixFactor: scale !== null && 'factor' in scale ? scale.factor : null,
    brixChart: scale !== null && 'chart' in scale ? scale.chart : null,
    resolution: shop.resolution,
    fillVolume: sump.fillVolume ?? null,
    capacity: sump.capacity ?? null,
    minVolume: sump.minVolume ?? null,
    holdUp: sump.holdUp ?? 0,
    dipTable: sump.dipTable ?? null,
    target: limits.target ?? (low !== undefined && high !== undefined ? (low + high) / 2 : null),
    band,
    maxStrength: Math.min(fluid?.maxMixStrength ?? usualStrongest, ...strongest),
    minStrength: fluid?.minTopUp ?? 0,
    class: fluid?.class ?? null,
    waters: shop.waters,
    container: shop.container,
    measure: shop.measure,
  }
}

/** What the benches of all sumps of a shop have alike. */
interface ShopBench extends Pick<RecipeBench, 'resolution' | 'waters' | 'container' | 'measure'> {
  strongest: readonly number[]
}

/** Things of an instant never change: other things are another object. */
const shopBenches = new WeakMap<Things, ShopBench>()

function shopBench(things: Things): ShopBench {
  const known = shopBenches.get(things)
  if (known !== undefined) return known
  const bench = {
    resolution: resolutionOf(things),
    strongest: mixerReach(things),
    waters: [...things.water.values()].map(({ id, name, kind, hardness }) => ({
      id,
      name,
      ...(kind === undefined ? {} : { kind }),
      ...(hardness === undefined ? {} : { hardness }),
    })),
    container: bucketOf(things),
    measure: jugOf(things),
  }
  shopBenches.set(things, bench)
  return bench
}

/** The finest refractometer of the shop; instruments of other kinds do not count. */
function resolutionOf({ instrument }: Things): number {
  const steps = [...instrument.values()]
    .filter(({ kind }) => kind?.toLowerCase().includes('refractometer') === true)
    .flatMap(({ resolution }) => (resolution === undefined ? [] : [resolution]))
  return steps.length === 0 ? usualResolution : Math.min(...steps)
}

/** What the strongest setting of the best mixer gives; a shop without mixers mixes in buckets. */
function mixerReach({ mixer }: Things): number[] {
  const strongest = [...mixer.values()].flatMap(({ settings = [] }) => settings.map(([, percent]) => percent))
  return strongest.length === 0 ? [] : [Math.max(...strongest)]
}

/** What water is carried in: the first container of 5 to 30 litres, as a person carries it. */
function bucketOf({ container }: Things): BenchContainer | null {
  return [...container.values()].flatMap(carried).find(({ capacity }) => capacity >= 5 && capacity <= 30) ?? null
}

/** What concentrate is measured in: the smaller container with the finest marks. */
function jugOf({ container }: Things): BenchContainer | null {
  const jugs = [...container.values()].flatMap(carried).filter(({ capacity }) => capacity < 5)
  return jugs.toSorted((a, b) => (a.graduation ?? a.capacity) - (b.graduation ?? b.capacity))[0] ?? null
}

const carried = ({ id, name, capacity, graduation }: Container): BenchContainer[] =>
  capacity === undefined ? [] : [{ id, name, capacity, ...(graduation === undefined ? {} : { graduation }) }]
