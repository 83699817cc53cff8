import type { ShopPriors } from '../estimate/priors.ts'
import { say } from '../words/index.ts'
import { type Reader, sayNumber } from './units.ts'

/**
 * What a shop has taught the estimate, and from how much: "Learnt from 20 sumps and 545 readings over 112 days: stand-alone sumps
 * lose 2.0 % of their fill to the air on a working day and 0.8 % with what is carried off; a refractometer reads to 0.08 °Brix here."
 * Before there is anything to learn from it says what stands in for it.
 */
export function sayLearnt({ version, from, groups, brixNoise }: ShopPriors, reader: Pick<Reader, 'locale'>): string {
  if (version === 0) {
    return say(
      'Nothing is learnt from this shop yet: losses and noise are taken from common practice, until four weeks are recorded.',
    )
  }
  const kinds = Object.entries(groups).filter(([kind]) => kind !== 'default')
  const share = (logarithm: number) => `${sayNumber(100 * Math.exp(logarithm), 1, reader)} %`
  const losses = kinds.map(([kind, { evaporation, carryOff }]) =>
    say(
      '{kind, select, central {central sumps} other {stand-alone sumps}} lose {air} of their fill to the air on a working day and {carried} with what is carried off',
      { kind, air: share(evaporation.mean), carried: share(carryOff.mean) },
    ),
  )
  const hand = say('a refractometer reads to {noise} °Brix here', { noise: sayNumber(brixNoise.fixed, 2, reader) })
  return say(
    'Learnt from {sumps, plural, one {# sump} other {# sumps}} and {readings, plural, one {# reading} other {# readings}} over {days, plural, one {# day} other {# days}}: {learnt}.',
    { sumps: from.sumps, readings: from.readings, days: from.days, learnt: [...losses, hand].join('; ') },
  )
}
