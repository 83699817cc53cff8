import { pass } from '../../../packages/fluid/src/estimate/flow.ts'
import { sightOfBrix, takeSight } from '../../../packages/fluid/src/estimate/observe.ts'
import { publishedPriors } from '../../../packages/fluid/src/estimate/priors.ts'
import { newSump } from '../../../packages/fluid/src/estimate/shop-estimate.ts'
import { assignBelief, copyBelief } from '../../../packages/fluid/src/filter/index.ts'
import { ourStart, ourStep, readingAt } from './linear-problem.ts'

/** Steps after which a belief begins anew, so that it stays one that a sump can have. */
export const stepsInARow = 100

/** So many steps, the belief begun anew after every hundred. */
export type Loop = (steps: number) => void

const halfADay = { days: 0.5, evaporation: 0.5, carryOff: 0.5 }
const seen = { brix: 6.4, perPercent: 0.8, offset: 0, offsetVariance: 0.0064, resolution: 0.1 }

/** Predict and update of the model itself: half a working day passes, and one sight through the refractometer is learnt. */
export function modelLoop(): Loop {
  const spec = {
    mark: 200,
    capacity: 250,
    minVolume: 80,
    holdUp: 20,
    group: 'stand-alone',
    fluid: 'a',
    target: 8,
  }
  const start = newSump(spec, 0, publishedPriors).branches[0]!.belief
  const belief = copyBelief(start)
  return (steps) => {
    for (let step = 0; step < steps; step++) {
      if (step % stepsInARow === 0) assignBelief(belief, start)
      pass(belief, halfADay)
      takeSight(belief, sightOfBrix(belief, seen, publishedPriors))
    }
  }
}

/** The filter alone on a linear problem of the same size. */
export function filterLoop(): Loop {
  const start = ourStart()
  const belief = copyBelief(start)
  const readings = Float64Array.from({ length: stepsInARow }, (_, step) => readingAt(step))
  return (steps) => {
    for (let step = 0; step < steps; step++) {
      if (step % stepsInARow === 0) assignBelief(belief, start)
      ourStep(belief, readings[step % stepsInARow]!)
    }
  }
}
