import { concentrationFromBrix, scaleOn, titrationDoubt, usualResolution } from '@sumpbook/fluid'
import { dayOf } from '../journal/calendar.ts'
import { utc } from '../journal/order.ts'
import type { Reading } from '../schema/entries/index.ts'
import type { Fluid } from '../schema/things/index.ts'
import type { Value } from '../schema/values.ts'
import type { Things } from '../setup/things.ts'

/** A reading that would be more than concentrate: nothing is known but that it is wrong. */
const impossible = { mean: 100, sd: 50 }

/**
 * What one reading by itself says of the strength, percent by refractometer, without one by titration; null where the fluid's factor is
 * unknown. Where a sump stands is the estimate's to say.
 */
export function strengthRead(entry: Reading, fluid: Fluid | undefined, then: Things, lot: string | null = null) {
  const brix = figureOf(entry.brix)
  const scale = fluid === undefined ? null : scaleOn(fluid, dayOf(utc(entry.at), then.shop.timeZone), lot)
  if (brix !== null && scale !== null) {
    const resolution = then.instrument.get(entry.instrument ?? '')?.resolution ?? usualResolution
    const read = concentrationFromBrix({ brix: brix.mean, ...scale, resolution })
    if (read.outcome === 'off-chart') return null
    if (read.concentration > 100) return impossible
    const spread = brix.mean > 0 ? (brix.sd * read.concentration) / brix.mean : brix.sd
    return { mean: read.concentration, sd: Math.hypot(read.sd, spread) }
  }
  const titration = figureOf(entry.titration)
  return titration === null
    ? null
    : { mean: titration.mean, sd: Math.hypot(titration.sd, titrationDoubt * titration.mean) }
}

/** A class as its middle with the spread of a uniform distribution; one without two ends says too little. */
function figureOf(value: Value | undefined): { mean: number; sd: number } | null {
  if (value === undefined) return null
  if (typeof value === 'number') return { mean: value, sd: 0 }
  if (!('low' in value)) return null
  return { mean: (value.low + value.high) / 2, sd: (value.high - value.low) / Math.sqrt(12) }
}
