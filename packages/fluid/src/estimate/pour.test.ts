import fc from 'fast-check'
import { expect, test } from 'vitest'
import { chargeAnew, type Pour, pourShare, pourUpTo, takeOut } from './pour.ts'
import { start } from './priors.ts'
import {
  bias,
  carryOff,
  chloride,
  evaporation,
  fill,
  full,
  gauge,
  hardness,
  moving,
  pours,
  scale,
  size,
  strength,
  titration,
} from './state.ts'
import { beliefOf } from './testing.ts'

const certain: Pour = {
  strength: 6,
  strengthSd: 0,
  mixed: true,
  hardness: 100,
  hardnessSd: 0,
  chloride: 40,
  chlorideSd: 0,
}
const usual = {
  [fill]: 0.75,
  [strength]: 8,
  [hardness]: 300,
  [chloride]: 80,
  [evaporation]: Math.log(0.016),
  [carryOff]: Math.log(0.006),
  [full]: 1,
}
const heldBy = ({ mean }: ReturnType<typeof beliefOf>, i: number) => mean[fill]! * mean[i]!

test('a measured pour mixes with what is there', () => {
  // 0.75 at 8 % and 0.25 at 6 %: 7.5 %; 300 and 100 mg/L: 250; 80 and 40: 70.
  const belief = beliefOf(usual)
  pourShare(belief, 0.25, 0, certain)
  expect(belief.mean[fill]).toBe(1)
  expect(belief.mean[strength]).toBeCloseTo(7.5, 12)
  expect(belief.mean[hardness]).toBeCloseTo(250, 12)
  expect(belief.mean[chloride]).toBeCloseTo(70, 12)
})

test('what all pours of the shop have in common moves what came through its mixing, nothing else', () => {
  // Pours are a tenth stronger than written: 6.6 %.
  const tenth = { ...usual, [pours]: Math.log(1.1) }
  const mixed = beliefOf(tenth)
  pourShare(mixed, 0.25, 0, certain)
  expect(mixed.mean[strength]).toBeCloseTo((0.75 * 8 + 0.25 * 6.6) / 1, 12)
  const neat = beliefOf(tenth)
  pourShare(neat, 0.25, 0, { ...certain, mixed: false })
  expect(neat.mean[strength]).toBeCloseTo(7.5, 12)
})

test('nothing is stronger than concentrate', () => {
  const belief = beliefOf({ ...usual, [pours]: 1 })
  pourShare(belief, 0.25, 0, { ...certain, strength: 90 })
  expect(belief.mean[strength]).toBeCloseTo(0.75 * 8 + 0.25 * 100, 12)
})

test('a fill to the mark pours what was missing', () => {
  const belief = beliefOf(usual)
  pourUpTo(belief, 0.03, certain)
  expect(belief.mean[fill]).toBe(1)
  expect(belief.mean[strength]).toBeCloseTo(7.5, 12)
  // The eye that fills is out by 3 % of the mark, and what was poured with it: ∂C/∂a = (6 − 8) · 0.75.
  expect(Math.sqrt(belief.cov[fill * (size + 1)]!)).toBeCloseTo(0.03, 12)
  expect(belief.cov[fill * size + strength]).toBeCloseTo(0.03 ** 2 * -1.5, 12)
})

test('a level that shows too much is filled to too little', () => {
  const belief = beliefOf({ ...usual, [gauge]: 0.05 })
  pourUpTo(belief, 0.03, certain)
  expect(belief.mean[fill]).toBeCloseTo(0.95, 12)
  expect(belief.mean[strength]).toBeCloseTo((0.75 * 8 + 0.2 * 6) / 0.95, 12)
})

test('a sump that was believed to be over its mark already was not: next to nothing came in', () => {
  const belief = beliefOf({ ...usual, [fill]: 1.1 })
  pourUpTo(belief, 0.03, certain)
  expect(belief.mean[fill]).toBe(1)
  expect(belief.mean[strength]).toBeCloseTo(8, 2)
})

test('what is taken out is the mix as it is', () => {
  const belief = beliefOf(usual)
  takeOut(belief, 0.25, 0.01)
  expect(belief.mean[fill]).toBe(0.5)
  expect([...belief.mean.slice(1, moving)]).toEqual([8, 300, 80])
  expect(belief.cov[fill * (size + 1)]).toBeCloseTo(1e-4, 12)
})

test('more than there is cannot be taken out: a puddle stays', () => {
  const belief = beliefOf(usual)
  takeOut(belief, 5, 0.01)
  expect(belief.mean[fill]).toBe(0.02)
  const other = beliefOf(usual)
  pourShare(other, -5, 0.01, certain)
  expect(other.mean[fill]).toBeCloseTo(0.02, 12)
})

test('nothing of concentrate or minerals is lost in a pour, or made', () => {
  // A sump fuller than four times its mark is none: together less than that.
  const share = fc.double({ min: 0.001, max: 1.9, noNaN: true })
  const held = fc.double({ min: 0, max: 99, noNaN: true })
  fc.assert(
    fc.property(share, share, held, held, held, (level, a, before, x, salt) => {
      const belief = beliefOf({ ...usual, [fill]: 0.02 + level, [strength]: before, [chloride]: salt })
      const [concentrate, chlorideBefore] = [heldBy(belief, strength), heldBy(belief, chloride)]
      pourShare(belief, a, 0.01, { ...certain, strength: x, chloride: 2 * salt })
      expect(heldBy(belief, strength)).toBeCloseTo(concentrate + a * x, 8)
      expect(heldBy(belief, chloride)).toBeCloseTo(chlorideBefore + a * 2 * salt, 8)
      // What a mix makes lies between what was mixed.
      expect(belief.mean[strength]!).toBeGreaterThanOrEqual(Math.min(before, x) - 1e-9)
      expect(belief.mean[strength]!).toBeLessThanOrEqual(Math.max(before, x) + 1e-9)
      const up = beliefOf({ ...usual, [strength]: before, [full]: 0.75 + a })
      pourUpTo(up, 0.01, { ...certain, strength: x })
      expect(heldBy(up, strength)).toBeCloseTo(0.75 * before + (up.mean[fill]! - 0.75) * x, 6)
    }),
  )
})

/** How the sump after a pour depends on one quantity before it, by trying. */
function tried(change: (belief: ReturnType<typeof beliefOf>) => void, means: Record<number, number>, i: number) {
  const h = 1e-6 * Math.max(1, Math.abs(means[i] ?? 0))
  const at = (value: number) => {
    const belief = beliefOf({ ...means, [i]: value })
    change(belief)
    return [...belief.mean.slice(0, moving)]
  }
  const [more, less] = [at((means[i] ?? 0) + h), at((means[i] ?? 0) - h)]
  return more.map((value, k) => (value - less[k]!) / (2 * h))
}

const change = {
  'a measured pour': (belief: ReturnType<typeof beliefOf>) =>
    // Litres over the plate's mark are so much of the true one.
    pourShare(belief, 0.2 * Math.exp(-belief.mean[scale]!), 0, certain),
  'a pour of a share of the true mark': (belief: ReturnType<typeof beliefOf>) =>
    pourShare(belief, 0.2, 0, certain, false),
  'a fill to the mark': (belief: ReturnType<typeof beliefOf>) => pourUpTo(belief, 0, certain),
  'a measured draw-off': (belief: ReturnType<typeof beliefOf>) =>
    takeOut(belief, 0.2 * Math.exp(-belief.mean[scale]!), 0),
}

test.each(Object.entries(change))('%s: what was uncertain before is so after it by as much as it counts', (_, act) => {
  const means = { ...usual, [pours]: 0.05, [gauge]: 0.02, [scale]: 0.1 }
  for (const i of [fill, strength, hardness, chloride, pours, gauge, full, scale]) {
    const variance = 1e-8
    const belief = beliefOf(means, { [i]: variance })
    act(belief)
    const slopes = tried(act, means, i)
    for (let k = 0; k < moving; k++) {
      // Of a quantity that moves itself its own variance tells the square of its slope.
      const found =
        i < moving ? Math.sqrt(belief.cov[k * (size + 1)]! / variance) : belief.cov[k * size + i]! / variance
      const wanted = i < moving ? Math.abs(slopes[k]!) : slopes[k]!
      expect(Math.abs(found - wanted), `${i} on ${k}`).toBeLessThan(1e-5 * Math.max(1, Math.abs(wanted)))
    }
  }
})

test('the doubt of a pour comes in by its part of the whole', () => {
  const belief = beliefOf(usual)
  pourShare(belief, 0.25, 0, { ...certain, strengthSd: 0.4, hardnessSd: 20, chlorideSd: 8 })
  expect(Math.sqrt(belief.cov[strength * (size + 1)]!)).toBeCloseTo(0.1, 12)
  expect(Math.sqrt(belief.cov[hardness * (size + 1)]!)).toBeCloseTo(5, 12)
  expect(Math.sqrt(belief.cov[chloride * (size + 1)]!)).toBeCloseTo(2, 12)
})

test('a fresh charge keeps of the old fluid what was held back', () => {
  // A tenth at 8 % stays, 0.9 at 6 % come in: 6.2 %; hardness 0.1 · 300 + 0.9 · 100 = 120.
  const belief = beliefOf({ ...usual, [bias]: 0.5 })
  chargeAnew(belief, { heel: 0.1, heelSd: 0, share: 0.9, shareSd: 0 }, certain)
  expect(belief.mean[fill]).toBeCloseTo(1, 12)
  expect(belief.mean[strength]).toBeCloseTo(6.2, 12)
  expect(belief.mean[hardness]).toBeCloseTo(120, 12)
  // A tenth of what the refractometer feigned stays, the rest is what fresh fluid feigns.
  expect(belief.mean[bias]).toBeCloseTo(0.1 * 0.5 + 0.9 * start.biasFresh.mean, 12)
})

test('a charge nobody measured is filled to the mark', () => {
  const belief = beliefOf(usual)
  chargeAnew(belief, { heel: 0.2, heelSd: 0, share: null, shareSd: 0 }, certain)
  expect(belief.mean[fill]).toBe(1)
  expect(belief.mean[strength]).toBeCloseTo(0.2 * 8 + 0.8 * 6, 12)
})

test('without a heel the fresh fluid is all there is, and what was titrated too much is forgotten', () => {
  const belief = beliefOf({ ...usual, [titration]: 0.4 }, { [strength]: 4, [titration]: 0.01 })
  chargeAnew(belief, { heel: 0, heelSd: 0, share: 1, shareSd: 0 }, certain)
  expect(belief.mean[strength]).toBeCloseTo(6, 6)
  expect(belief.mean[chloride]).toBeCloseTo(40, 6)
  expect(belief.mean[titration]).toBe(0)
  expect(Math.sqrt(belief.cov[strength * (size + 1)]!)).toBeLessThan(0.1)
})
