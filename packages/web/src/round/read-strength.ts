import { concentrationFromBrix, type Figure, readQuantity, say, sayNumber } from '@sumpbook/fluid'
import type { RecipeBench } from '../api/types.ts'
import { faultParts } from '../fields/read.ts'
import { sayBand } from '../say/units.ts'
import { type Read, whole } from './typed.ts'

/** What was typed of the refractometer: more than neat concentrate is a fault. */
export function readBrix(text: string, bench: RecipeBench): Read<number> {
  if (text.trim() === '') return { seen: null }
  const read = readQuantity(whole(text), { kind: 'brix', unit: '°Brix' })
  if ('fault' in read) return { fault: { field: 'brix', ...faultParts(read.fault) } }
  if (read.value < 0 || read.value > 95) {
    return { fault: { field: 'brix', found: text.trim(), expected: say('from 0 to 95 °Brix') } }
  }
  const strength = strengthOf(read.value, bench)
  if (strength !== null && 'mean' in strength && strength.mean > 100) {
    const found = say('{brix} °Brix, which would be {strength} %', {
      brix: text.trim(),
      strength: sayNumber(strength.mean, 0),
    })
    return { fault: { field: 'brix', found, expected: say('no more than neat concentrate, 100 %') } }
  }
  return { seen: read.value }
}

/** A strength with its standard deviation, why there is none, or null where nothing was read; per cent. */
export type Strength = { mean: number; sd: number } | { unknown: string } | null

export function strengthOf(brix: number, { brixChart, brixFactor, resolution }: RecipeBench): Strength {
  if (brixChart === null && brixFactor === null) {
    return {
      unknown: say(
        'The Brix factor of this fluid is not known, so no strength follows. It stands on the fluid’s sheet; enter it under Shop.',
      ),
    }
  }
  const read =
    brixChart === null
      ? concentrationFromBrix({ brix, resolution, factor: brixFactor! })
      : concentrationFromBrix({ brix, resolution, chart: brixChart })
  if (read.outcome === 'off-chart') {
    return {
      unknown: say('The fluid’s chart runs from {low} to {high} °Brix; {brix} lies outside it.', {
        low: sayNumber(read.low, 1),
        high: sayNumber(read.high, 1),
        brix: sayNumber(brix, 1),
      }),
    }
  }
  return { mean: read.concentration, sd: read.sd }
}

/** Where in its band, in words: its lowest and highest sixth are its foot and its top. */
export function standsWords(concentration: Pick<Figure, 'mean'> | null, { band }: Pick<RecipeBench, 'band'>): string {
  if (concentration === null || band === null) return ''
  const { mean } = concentration
  const edge = (band.high - band.low) / 6
  const of = { band: sayBand(band) }
  if (mean < band.low) return say('under its band of {band}', of)
  if (mean > band.high) return say('above its band of {band}', of)
  if (mean < band.low + edge) return say('at the foot of its band of {band}', of)
  return mean > band.high - edge ? say('at the top of its band of {band}', of) : say('in its band of {band}', of)
}
