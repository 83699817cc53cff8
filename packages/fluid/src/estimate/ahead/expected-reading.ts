import type { Brix, Figure, Percent } from '../../quantities.ts'
import type { ScaleInUse } from '../../refractometer/scale-on.ts'
import { alone } from '../entries/round.ts'
import { brixSight } from '../entries/sights.ts'
import type { ReadingEvent } from '../events.ts'
import { type Sight, varianceOf } from '../observe.ts'
import type { Branch, ShopEstimate } from '../shop-estimate.ts'
import { size, strength } from '../state.ts'
import { figureOf } from './mixture.ts'
import { dropAll, later, type Untouched } from './untouched.ts'

/** What a refractometer will show if it is read now, and what a reading then says of the concentration. */
export interface ExpectedReading {
  /** °Brix with the reading's own error: 9 readings in 10 fall into its interval. */
  brix: Figure
  /** Percent by which the concentration moves for each °Brix that is read more than expected. */
  gain: Percent
}

/** With what it will be read. */
export interface Instrument {
  /** How °Brix becomes percent for each fluid today. */
  scales: ReadonlyMap<string, ScaleInUse>
  /** Step of the refractometer. */
  resolution: Brix
}

/**
 * The reading that a sump's records lead to expect, oil, dirt, minerals and the hand that reads included, and the weight that a
 * reading has against them. Over the mixture of all courses the records allow
 *
 *     gain = Cov(C, y) / Var(y)
 *
 * is the best straight line from a reading to the concentration.
 *
 * Source: best linear prediction; R. E. Kalman, J. Basic Engineering 82 (1960) 35.
 *
 * @returns null where no scale of its fluids is known
 */
export function expectedReading(
  { shop, sump, now }: Untouched,
  { scales, resolution }: Instrument,
): ExpectedReading | null {
  const trial: ReadingEvent = { ...notRead, id: '', at: now, sump: '', scales, resolution }
  const beliefs = later(shop, sump, now)
  const parts = beliefs.flatMap(({ branch, belief, probability }) => {
    const sight = sightAt({ ...branch, belief }, trial, shop)
    if (sight === null) return []
    const variance = varianceOf(belief, sight)
    const along = (j: number, slope: number) => (j < 0 ? 0 : belief.cov[strength * size + j]! * slope)
    const { first, firstSlope, second, secondSlope, third, thirdSlope } = sight
    const together = along(first, firstSlope) + along(second, secondSlope) + along(third, thirdSlope)
    return [{ probability, mean: sight.expected, sd: Math.sqrt(variance), together, of: belief.mean[strength]! }]
  })
  dropAll(beliefs)
  const known = parts.reduce((sum, { probability }) => sum + probability, 0)
  if (!(known > 0)) return null
  const weighed = parts.map((part) => ({ ...part, probability: part.probability / known }))
  const brix = figureOf(weighed, 0)
  const middle = weighed.reduce((sum, { probability, of }) => sum + probability * of, 0)
  const shown = weighed.reduce((sum, { probability, mean }) => sum + probability * mean, 0)
  const covariance = weighed.reduce(
    (sum, { probability, together, of, mean }) => sum + probability * (together + (of - middle) * (mean - shown)),
    0,
  )
  return { brix, gain: covariance / brix.sd ** 2 }
}

/** The sight of a reading that shows what is expected: a chart bends, so that its factor there is sought step by step. */
function sightAt(branch: Branch, trial: ReadingEvent, { priors }: ShopEstimate): Sight | null {
  const sightOf = (brix: Brix) => brixSight(branch, { ...trial, brix }, alone(priors), priors)
  let brix = branch.belief.mean[strength]!
  let sight = sightOf(brix)
  for (let round = 0; sight !== null && round < mostRounds && Math.abs(sight.expected - brix) > 1e-4; round++) {
    brix = (brix + sight.expected) / 2
    sight = sightOf(brix)
  }
  return sight
}

/** Each halves what is still missing. */
const mostRounds = 20

const notRead = {
  brix: null,
  kind: 'reading',
  instrument: null,
  titration: null,
  hardness: null,
  chloride: null,
  conductivity: null,
  seen: null,
  pumps: 'stopped',
} as const
