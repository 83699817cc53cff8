import type { ShopPriors } from '../estimate/priors.ts'
import { sayCount } from './phrases.ts'
import { type Reader, sayNumber } from './units.ts'

/**
 * What a shop has taught the estimate, and from how much: "Learnt from 20 sumps and 545 readings over 112 days: stand-alone sumps
 * lose 2.0 % of their fill to the air on a working day and 0.8 % with what is carried off; a refractometer reads to 0.08 °Brix here."
 * Before there is anything to learn from it says what stands in for it.
 */
export function sayLearnt({ version, from, groups, brixNoise }: ShopPriors, reader: Pick<Reader, 'locale'>): string {
  if (version === 0) {
    return 'Nothing is learnt from this shop yet: losses and noise are taken from common practice, until four weeks are recorded.'
  }
  const kinds = Object.entries(groups).filter(([kind]) => kind !== 'default')
  const share = (logarithm: number) => `${sayNumber(100 * Math.exp(logarithm), 1, reader)} %`
  const losses = kinds.map(
    ([kind, { evaporation, carryOff }]) =>
      `${kind} sumps lose ${share(evaporation.mean)} of their fill to the air on a working day and ${share(carryOff.mean)} with what is carried off`,
  )
  const hand = `a refractometer reads to ${sayNumber(brixNoise.fixed, 2, reader)} °Brix here`
  const much = `${sayCount(from.sumps, 'sump', 'sumps')} and ${sayCount(from.readings, 'reading', 'readings')} over ${sayCount(from.days, 'day', 'days')}`
  return `Learnt from ${much}: ${[...losses, hand].join('; ')}.`
}
