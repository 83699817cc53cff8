import { expect, test } from 'vitest'
import {
  classOf,
  middleOf,
  sightOfBrix,
  sightOfLevel,
  sightOfMinerals,
  sightOfTitration,
  takeClass,
  takeSight,
  varianceOf,
} from './observe.ts'
import { brixPerHardness, publishedPriors } from './priors.ts'
import { bias, chloride, fill, gauge, hardness, holdUp, size, strength, titration } from './state.ts'
import { beliefOf } from './testing.ts'

const usual = {
  [fill]: 0.9,
  [strength]: 8,
  [hardness]: 250,
  [chloride]: 80,
  [bias]: 0.2,
  [titration]: 0.3,
  [holdUp]: 0.12,
  [gauge]: 0.01,
}
const priors = { ...publishedPriors, brixNoise: { fixed: 0.09, share: 0.012 }, levelNoise: 0.025 }
const seen = { brix: 5, perPercent: 0.5, offset: 0.1, offsetVariance: 0.0064, resolution: 0.1 }

test('a refractometer shows the concentrate by its factor, salts, oil and dirt, and what its round has too much', () => {
  // 8 · 0.5 + 0.2 + 0.1 = 4.3, and the salts.
  const sight = sightOfBrix(beliefOf(usual), seen, priors)
  expect(sight.read).toBe(5)
  expect(sight.expected).toBeCloseTo(4.3 + 250 * brixPerHardness, 12)
  // 0.09² + (0.012 · shown)² + 0.1² / 12 + 0.0064.
  expect(sight.variance).toBeCloseTo(0.0081 + (0.012 * sight.expected) ** 2 + 0.01 / 12 + 0.0064, 12)
})

test('what a reading is uncertain by comes from the concentrate, the salts and the oil', () => {
  const belief = beliefOf(usual, { [strength]: 0.25, [hardness]: 2500, [bias]: 0.04, [fill]: 9 })
  const sight = sightOfBrix(belief, seen, priors)
  expect(varianceOf(belief, sight)).toBeCloseTo(0.25 * 0.25 + 2500 * brixPerHardness ** 2 + 0.04 + sight.variance, 12)
})

test('titration finds the concentrate and what else takes part', () => {
  const belief = beliefOf(usual, { [strength]: 0.25, [titration]: 0.09 })
  const sight = sightOfTitration(belief, 7)
  expect(sight.expected).toBeCloseTo(8.3, 12)
  expect(varianceOf(belief, sight)).toBeCloseTo(0.25 + 0.09 + 0.04 + (0.03 * 8.3) ** 2, 12)
})

test('a level with the pumps stopped is the fill and what it shows too much; running, the lines are missing from it', () => {
  const belief = beliefOf(usual, { [fill]: 0.01, [holdUp]: 0.0025, [gauge]: 0.0004 })
  const stopped = sightOfLevel(belief, { share: 0.88, running: false }, priors)
  expect(stopped.expected).toBeCloseTo(0.91, 12)
  expect(varianceOf(belief, stopped)).toBeCloseTo(0.01 + 0.0004 + 0.025 ** 2, 12)
  const running = sightOfLevel(belief, { share: 0.88, running: true }, priors)
  expect(running.expected).toBeCloseTo(0.79, 12)
  expect(varianceOf(belief, running)).toBeCloseTo(0.01 + 0.0025 + 0.0004 + 0.025 ** 2, 12)
  // A running level above what was expected speaks for less in the lines.
  takeSight(belief, running)
  expect(belief.mean[holdUp]!).toBeLessThan(0.12)
  expect(belief.mean[fill]!).toBeGreaterThan(0.9)
})

test('a figure of minerals is good to a tenth', () => {
  const belief = beliefOf(usual, { [hardness]: 900 })
  const sight = sightOfMinerals(belief, hardness, 280)
  expect(sight.variance).toBe(28 ** 2 + 25)
  // S = 900 + 809, surprise 30: 250 + 900 / 1709 · 30 = 265.8; variance 900 · 809 / 1709.
  takeSight(belief, sight)
  expect(belief.mean[hardness]).toBeCloseTo(250 + (900 / 1709) * 30, 10)
  expect(belief.cov[hardness * (size + 1)]).toBeCloseTo((900 * 809) / 1709, 9)
})

test('how likely a reading was is told by its normal density', () => {
  // S = 900 + 809: ln of 1 / √(2π · 1709) · e^(−900 / 3418).
  const belief = beliefOf(usual, { [hardness]: 900 })
  const likely = takeSight(belief, sightOfMinerals(belief, hardness, 280))
  expect(likely).toBeCloseTo(Math.log(Math.exp(-900 / 3418) / Math.sqrt(2 * Math.PI * 1709)), 12)
})

/** Mean, variance and probability of hardness 250 ± `sd` given that what was read of it lies in a class, by a sum over a fine grid. */
function summed(sd: number, low: number, high: number) {
  const middle = Math.min(high, Math.max(low, 250))
  const noise = Math.hypot(0.13 * middle, 3)
  let [total, first, second] = [0, 0, 0]
  const [parts, reach] = [1200, 8]
  for (let k = 0; k < parts; k++) {
    const z = ((k + 0.5) / parts - 0.5) * 2 * reach
    const x = 250 + z * sd
    let inClass = 0
    for (let l = 0; l < parts; l++) {
      const u = ((l + 0.5) / parts - 0.5) * 2 * reach
      const y = x + u * noise
      if (y >= low && y < high) inClass += Math.exp(-(u ** 2) / 2)
    }
    const weight = Math.exp(-(z ** 2) / 2) * inClass
    total += weight
    first += weight * x
    second += weight * x ** 2
  }
  const cell = ((2 * reach) / parts) ** 2 / (2 * Math.PI)
  const mean = first / total
  return { share: total * cell, mean, sd: Math.sqrt(second / total - mean ** 2) }
}

test.each([
  ['the class it is expected in', 60, 180, 300],
  ['a class beside it', 60, 100, 180],
  ['a narrow class', 30, 240, 260],
  ['the last, open class', 60, 360, Number.POSITIVE_INFINITY],
  ['the first, open class', 100, Number.NEGATIVE_INFINITY, 120],
  ['a class far from it', 40, 400, 500],
])('a strip in %s teaches what a normal cut off at both ends would', (_, sd, low, high) => {
  const belief = beliefOf(usual, { [hardness]: sd ** 2 })
  const likely = takeClass(belief, hardness, low, high)
  const { share, mean, sd: left } = summed(sd, low, high)
  // The grid puts an edge of a class by up to half a step of its noise: a hundredth of an sd is the most that it can miss.
  expect(Math.abs(belief.mean[hardness]! - mean)).toBeLessThan(0.01 * sd)
  expect(Math.abs(Math.sqrt(belief.cov[hardness * (size + 1)]!) - left)).toBeLessThan(0.01 * sd)
  expect(Math.abs(Math.exp(likely) / share - 1)).toBeLessThan(0.02)
})

test('the class of everything says nothing', () => {
  const belief = beliefOf(usual, { [chloride]: 400 })
  const likely = takeClass(belief, chloride, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)
  expect(belief.mean[chloride]).toBeCloseTo(80, 9)
  expect(belief.cov[chloride * (size + 1)]).toBeCloseTo(400, 9)
  expect(likely).toBeCloseTo(0, 12)
})

test('a class beyond belief is taken as a reading at its nearer end', () => {
  const belief = beliefOf(usual, { [hardness]: 1 })
  const likely = takeClass(belief, hardness, 5000, 6000)
  // Good to a fifth of 5000: S = 1 + 1000², 250 + 4750 / 1000001.
  expect(belief.mean[hardness]).toBeCloseTo(250 + 4750 / 1_000_001, 9)
  expect(Number.isFinite(likely)).toBe(true)
  const low = beliefOf({ ...usual, [hardness]: 1e6 }, { [hardness]: 1 })
  takeClass(low, hardness, 0, 50)
  expect(low.mean[hardness]!).toBeLessThan(1e6)
})

test('a class has its ends, open where it says below or from; a figure has none', () => {
  expect(classOf({ low: 100, high: 180 })).toEqual({ low: 100, high: 180 })
  expect(classOf({ below: 50 })).toEqual({ low: Number.NEGATIVE_INFINITY, high: 50 })
  expect(classOf({ atLeast: 360 })).toEqual({ low: 360, high: Number.POSITIVE_INFINITY })
  expect(classOf(0)).toBe(null)
})

test('where a figure is needed a class is its middle, half of below, or the end it starts from', () => {
  expect([{ low: 4, high: 6 }, { below: 3 }, { atLeast: 9 }, 5.5].map(middleOf)).toEqual([5, 1.5, 9, 5.5])
})
