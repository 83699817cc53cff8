import fc from 'fast-check'
import { expect, test } from 'vitest'
import { pass, takeBack } from './flow.ts'
import { chemistry, dayByDay, oil, wander } from './priors.ts'
import {
  bias,
  carryOff,
  chloride,
  evaporation,
  fill,
  gain,
  hardness,
  moving,
  scale,
  size,
  strength,
  titration,
} from './state.ts'
import { beliefOf } from './testing.ts'

const usual = {
  [fill]: 0.95,
  [strength]: 8,
  [hardness]: 300,
  [chloride]: 80,
  [evaporation]: Math.log(0.016),
  [carryOff]: Math.log(0.006),
  [bias]: 0.1,
  [gain]: 0.25,
}
const atRest = { evaporation: 0.35, carryOff: 0.04 }
const workDays = (days: number) => ({ days, evaporation: days, carryOff: days })

test('a day of work takes water and fluid: less is left, and richer', () => {
  // 0.95 − 0.016 − 0.006 = 0.928; strength × (0.95 / 0.928)^(16/22), of which a little is used up.
  const belief = beliefOf(usual)
  pass(belief, workDays(1))
  expect(belief.mean[fill]).toBeCloseTo(0.928, 12)
  const growth = (0.95 / 0.928) ** (16 / 22)
  expect(belief.mean[strength]).toBeCloseTo(8 * growth * Math.exp(-chemistry.depletion), 12)
  expect(belief.mean[chloride]).toBeCloseTo(80 * growth, 12)
})

test('hardness above what soaps bear drops out as scum, and comes from chips', () => {
  const growth = (0.95 / 0.928) ** (16 / 22)
  const { scumAbove, scum } = chemistry
  const hard = beliefOf(usual)
  pass(hard, workDays(1))
  expect(hard.mean[hardness]).toBeCloseTo(300 * growth - (300 - scumAbove) * (1 - Math.exp(-scum)) + 0.25, 12)
  const soft = beliefOf({ ...usual, [hardness]: scumAbove })
  pass(soft, workDays(1))
  expect(soft.mean[hardness]).toBeCloseTo(scumAbove * growth + 0.25, 12)
})

test('what the refractometer feigns grows with oil and dirt, to a most', () => {
  const belief = beliefOf(usual)
  pass(belief, workDays(10))
  expect(belief.mean[bias]).toBeCloseTo(0.1 + 10 * oil.aDay, 12)
  const dirty = beliefOf({ ...usual, [bias]: oil.most })
  pass(dirty, workDays(10))
  expect(dirty.mean[bias]).toBe(oil.most)
})

test('no time changes nothing, nor does a time that is no number', () => {
  for (const days of [0, -1, Number.NaN]) {
    const belief = beliefOf(usual, { [fill]: 0.01 })
    pass(belief, workDays(days))
    expect(belief).toEqual(beliefOf(usual, { [fill]: 0.01 }))
  }
})

test('a long time is the days that it is made of', () => {
  const [once, daily] = [beliefOf({ ...usual, [hardness]: 100 }), beliefOf({ ...usual, [hardness]: 100 })]
  pass(once, workDays(10))
  for (let day = 0; day < 10; day++) pass(daily, workDays(1))
  for (const i of [fill, strength, chloride]) expect(once.mean[i]).toBeCloseTo(daily.mean[i]!, 10)
})

test('what evaporates leaves concentrate and minerals behind, what is carried off takes its share', () => {
  const rate = fc.double({ min: Math.log(1e-4), max: Math.log(0.1), noNaN: true })
  fc.assert(
    fc.property(
      rate,
      rate,
      fc.double({ min: 0.3, max: 1.2, noNaN: true }),
      fc.double({ min: 0.01, max: 2, noNaN: true }),
      (e, d, level, days) => {
        // Down to a puddle the level is held above nothing instead.
        fc.pre(level - (Math.exp(e) + Math.exp(d)) * days > 0.05)
        const belief = beliefOf({ ...usual, [fill]: level, [evaporation]: e, [carryOff]: d })
        pass(belief, { days: 1e-9, evaporation: days, carryOff: days })
        const [out, after] = [Math.exp(d) * days, belief.mean[fill]!]
        expect(after).toBeCloseTo(level - Math.exp(e) * days - out, 9)
        // The chloride gone is what was carried off, at a richness between the first and the last.
        const gone = 80 * level - belief.mean[chloride]! * after
        expect(gone).toBeGreaterThanOrEqual(80 * out - 1e-7)
        expect(gone).toBeLessThanOrEqual(belief.mean[chloride]! * out + 1e-7)
        expect(belief.mean[strength]! / belief.mean[chloride]!).toBeCloseTo(0.1, 7)
      },
    ),
  )
})

test('a balance without records ends as a puddle, never below nothing', () => {
  const belief = beliefOf({ ...usual, [evaporation]: Math.log(0.2) }, { [fill]: 0.01, [evaporation]: 0.3 })
  pass(belief, workDays(3650))
  expect(belief.mean[fill]!).toBeGreaterThan(0)
  expect(belief.mean[strength]!).toBeLessThanOrEqual(99)
  expect([...belief.mean, ...belief.cov].every(Number.isFinite)).toBe(true)
})

/** How a quantity after a time depends on one before it, by trying a little more and a little less. */
function tried(change: (belief: ReturnType<typeof beliefOf>) => void, means: Record<number, number>, i: number) {
  const h = 1e-6 * Math.max(1, Math.abs(means[i] ?? 0))
  const at = (value: number) => {
    const belief = beliefOf({ ...means, [i]: value })
    change(belief)
    return belief.mean.slice(0, moving)
  }
  const [more, less] = [at((means[i] ?? 0) + h), at((means[i] ?? 0) - h)]
  return [...more].map((value, k) => (value - less[k]!) / (2 * h))
}

test.each([
  ['a day', workDays(1), usual],
  // How a long time is cut up moves what drops out and comes in by a trace: left out here.
  ['a fortnight, in steps', workDays(14), { ...usual, [hardness]: 60, [gain]: 0 }],
  ['a weekend at rest', { days: 2, evaporation: 0.7, carryOff: 0.08 }, usual],
  ['soft water', workDays(1), { ...usual, [hardness]: 90 }],
  ['a sump that runs low', workDays(6), { ...usual, [fill]: 0.4, [hardness]: 60, [gain]: 0 }],
])('%s: what was uncertain before is so after it by as much as it counts', (_, time, means) => {
  for (const i of [fill, strength, hardness, chloride, evaporation, carryOff, ...(means[gain] === 0 ? [] : [gain])]) {
    const variance = 1e-8
    const belief = beliefOf(means, { [i]: variance })
    pass(belief, time, 0)
    const slopes = tried((one) => pass(one, time, 0), means, i)
    for (let k = 0; k < moving; k++) {
      // Of a quantity that moves itself its own variance tells the square of its slope.
      const found =
        i < moving ? Math.sqrt(belief.cov[k * (size + 1)]! / variance) : belief.cov[k * size + i]! / variance
      const wanted = i < moving ? Math.abs(slopes[k]!) : slopes[k]!
      expect(Math.abs(found - wanted), `${i} on ${k}`).toBeLessThan(2e-5 * Math.max(1, Math.abs(wanted)))
    }
  }
})

test('days differ: a loss is known to a share of it, over three days of the same weather and longer by their root', () => {
  // Evaporation alone, its rate known; of nine days √(9 / 3) less than of three.
  const wet = { [fill]: 0.95, [evaporation]: Math.log(0.02), [carryOff]: Math.log(1e-12) }
  const sdAfter = (days: number) => {
    const belief = beliefOf(wet)
    pass(belief, { days: 1e-9, evaporation: days, carryOff: days })
    return Math.sqrt(belief.cov[fill * size + fill]!)
  }
  expect(sdAfter(1)).toBeCloseTo(dayByDay.evaporation * 0.02, 8)
  expect(sdAfter(3)).toBeCloseTo(dayByDay.evaporation * 0.06, 8)
  expect(sdAfter(9)).toBeCloseTo((dayByDay.evaporation * 0.18) / Math.sqrt(3), 8)
})

test('a restless shop is so much less certain of its losses', () => {
  const sdAfter = (unrest: number) => {
    const belief = beliefOf(usual)
    pass(belief, workDays(1), unrest)
    return Math.sqrt(belief.cov[fill * size + fill]!)
  }
  expect(sdAfter(1.5) / sdAfter(1)).toBeCloseTo(1.5, 9)
})

test('what wanders becomes less certain with time, but not for ever', () => {
  const belief = beliefOf(usual)
  pass(belief, { days: 100, evaporation: 0, carryOff: 0 })
  // By the root of time: a hundred days are ten sds of one.
  expect(belief.cov[evaporation * (size + 1)]).toBeCloseTo((10 * wander.evaporation) ** 2, 6)
  expect(belief.cov[scale * (size + 1)]).toBeCloseTo((10 * wander.scale) ** 2, 8)
  expect(belief.cov[bias * (size + 1)]).toBeCloseTo((10 * wander.bias) ** 2, 7)
  pass(belief, { days: 100_000, evaporation: 0, carryOff: 0 })
  expect(belief.cov[evaporation * (size + 1)]).toBeCloseTo(0.81, 9)
  expect(belief.cov[titration * (size + 1)]).toBeCloseTo(0.36, 9)
})

test('more than that it is not made certain of either', () => {
  const belief = beliefOf(usual, { [evaporation]: 2 })
  pass(belief, workDays(1))
  expect(belief.cov[evaporation * (size + 1)]).toBe(2)
})

test('days that turn out to have been idle come back, but for what goes on at rest', () => {
  // Five days: water 0.016 · 5 · 0.65 = 0.052, fluid 0.006 · 5 · 0.96 = 0.0288.
  const belief = beliefOf({ ...usual, [fill]: 0.8, [strength]: 9 })
  takeBack(belief, 5, atRest)
  expect(belief.mean[fill]).toBeCloseTo(0.8 + 0.052 + 0.0288, 12)
  expect(belief.mean[strength]).toBeCloseTo((9 * (0.8 + 0.0288)) / (0.8 + 0.0288 + 0.052), 12)
  expect(Math.sqrt(belief.cov[fill * (size + 1)]!)).toBeCloseTo(0.5 * (0.052 + 0.0288), 12)
})

test('five days at work taken back are about five days at rest', () => {
  const [taken, rested] = [beliefOf(usual), beliefOf(usual)]
  pass(taken, workDays(5))
  takeBack(taken, 5, atRest)
  pass(rested, { days: 5, evaporation: 5 * atRest.evaporation, carryOff: 5 * atRest.carryOff })
  expect(taken.mean[fill]).toBeCloseTo(rested.mean[fill]!, 12)
  expect(taken.mean[strength]).toBeCloseTo(rested.mean[strength]!, 1)
})
