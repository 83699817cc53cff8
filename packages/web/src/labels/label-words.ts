import { say, sayVolume } from '@sumpbook/fluid'
import type { SumpNow, Units } from '../api/types.ts'
import { readerOf, sayBand, short } from '../say/units.ts'

/** What stands on a sump's label. */
export interface LabelWords {
  name: string
  place: string
  /** Each a term and what is known of it; what nobody told the book is left to be written by hand. */
  lines: { term: string; words: string | null }[]
}

/**
 * The label of a system: its fluid, the working concentration, the volume of the circuit, biocide and dose.
 *
 * Source: DGUV Regel 109-003 §6.3.1.1 for what it has to say. Biocide and dose stay a line to be written by hand: they are the label's of the
 * product that is used.
 */
export function labelWords({ name, place, fluid, bench }: SumpNow, units: Units): LabelWords {
  const { band, target, fillVolume } = bench
  return {
    name,
    place: place ?? '',
    lines: [
      { term: say('Fluid'), words: fluid.name },
      ...(bench.class === 'straight-oil'
        ? [{ term: say('No water'), words: say('a straight oil is used as delivered') }]
        : [
            {
              term: say('Concentration'),
              words:
                band === null
                  ? null
                  : target === null
                    ? sayBand(band)
                    : say('{band}, target {target} %', { band: sayBand(band), target: short(target) }),
            },
          ]),
      {
        term: say('Volume'),
        words:
          fillVolume === null ? null : say('{volume} at the mark', { volume: sayVolume(fillVolume, readerOf(units)) }),
      },
      ...(bench.class === 'straight-oil' ? [] : [{ term: say('Biocide, dose'), words: null }]),
    ],
  }
}
