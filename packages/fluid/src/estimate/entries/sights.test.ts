import { expect, test } from 'vitest'
import { publishedPriors } from '../priors.ts'
import { type Branch, newSump } from '../shop-estimate.ts'
import { bias, chloride, fill, hardness, scale, strength } from '../state.ts'
import { beliefOf, reading, specOf } from '../testing.ts'
import { alone } from './round.ts'
import { brixSight, mostSurprising, sightOf, takeAll, takeMinerals } from './sights.ts'

const priors = publishedPriors
const circumstances = { offset: { ...alone(priors), mean: 0, variance: 0 }, priors }
const sump = newSump(specOf({ mark: 200 }), 0, priors)
const branch = (fluids: Branch['fluids'] = [{ fluid: 'a', share: 1 }]): Branch => ({
  belief: beliefOf(
    { [fill]: 0.9, [strength]: 8, [hardness]: 0, [chloride]: 80 },
    { [strength]: 0.04, [fill]: 0.0025, [hardness]: 400, [chloride]: 100 },
  ),
  weight: 0,
  fluids,
  stories: [],
})

test('a mixture of products shows each by its factor', () => {
  // Two thirds of 8 % at 1 percent per °Brix, a third at 2: 5.333 + 1.333.
  const mixed = branch([
    { fluid: 'a', share: 2 / 3 },
    { fluid: 'b', share: 1 / 3 },
  ])
  const scales = new Map([
    ['a', { factor: 1 }],
    ['b', { factor: 2 }],
  ])
  const sight = brixSight(mixed, reading('s', 1, { brix: 6.5, scales }), circumstances.offset, priors)
  expect(sight!.expected).toBeCloseTo(16 / 3 + 4 / 3, 12)
})

test('a product without a scale shows like those that have one; without any nothing is expected', () => {
  const mixed = branch([
    { fluid: 'a', share: 0.5 },
    { fluid: 'unknown', share: 0.5 },
  ])
  const scales = new Map([['a', { factor: 2 }]])
  expect(brixSight(mixed, reading('s', 1, { brix: 4, scales }), circumstances.offset, priors)!.expected).toBeCloseTo(
    4,
    12,
  )
  const none = reading('s', 1, { brix: 4, scales: new Map() })
  expect(brixSight(mixed, none, circumstances.offset, priors)).toBe(null)
  expect(mostSurprising(branch(), sump, none, circumstances)).toBe(null)
})

test('on a chart the factor is that of the reading', () => {
  // 4 °Brix are 7 percent on this chart: 8 percent show 8 · 4 / 7.
  const scales = new Map([
    [
      'a',
      {
        chart: [
          [0, 0],
          [2, 3],
          [4, 7],
          [6, 12],
        ] as const,
      },
    ],
  ])
  const sight = brixSight(branch(), reading('s', 1, { brix: 4, scales }), circumstances.offset, priors)
  expect(sight!.expected).toBeCloseTo((8 * 4) / 7, 9)
})

test('what was not read is not expected', () => {
  const level = reading('s', 1, { seen: 170 })
  expect(sightOf('brix', branch(), sump, level, circumstances)).toBe(null)
  expect(sightOf('titration', branch(), sump, level, circumstances)).toBe(null)
  // 170 L of a plate of 200.
  expect(sightOf('seen', branch(), sump, level, circumstances)).toMatchObject({ read: 0.85, expected: 0.9 })
})

test('what surprises most is what lies most sds away', () => {
  const odd = reading('s', 1, { brix: 8, seen: 100, titration: 8.2 })
  const most = mostSurprising(branch(), sump, odd, circumstances)!
  expect(most.quantity).toBe('seen')
  // 0.9 − 0.5 over √(0.05² + the eye's).
  expect(most.z).toBeCloseTo(0.4 / Math.hypot(0.05, priors.levelNoise), 9)
  expect(most.sd).toBeCloseTo(Math.hypot(0.05, priors.levelNoise), 9)
})

test('figures of one reading are taken in together; one may be left out', () => {
  const both = reading('s', 1, { brix: 8.3, seen: 170 })
  const [all, without] = [branch(), branch()]
  const likely = takeAll(all, sump, both, circumstances)
  const part = takeAll(without, sump, both, circumstances, 'brix')
  expect(all.belief.mean[strength]!).toBeGreaterThan(8)
  expect(without.belief.mean[strength]).toBe(8)
  expect(without.belief.mean[fill]).toBeCloseTo(all.belief.mean[fill]!, 12)
  const brixAlone = takeAll(branch(), sump, { ...both, seen: null }, circumstances)
  expect(likely).toBeCloseTo(part + brixAlone, 9)
})

test('minerals are taken as figures or as classes', () => {
  const [figure, strip] = [branch(), branch()]
  takeMinerals(figure, reading('s', 1, { chloride: 100 }))
  expect(figure.belief.mean[chloride]!).toBeGreaterThan(80)
  expect(figure.belief.mean[chloride]!).toBeLessThan(100)
  takeMinerals(strip, reading('s', 1, { chloride: { low: 0, high: 75 } }))
  expect(strip.belief.mean[chloride]!).toBeLessThan(80)
})

test('no reading makes anything less than nothing', () => {
  const odd = branch()
  odd.belief.cov[strength * 15] = 100
  odd.belief.cov[scale * 15] = 1
  odd.belief.cov[bias * 15] = 1
  takeAll(odd, sump, reading('s', 1, { brix: 0, seen: 0, titration: 0 }), circumstances)
  takeMinerals(odd, reading('s', 1, { hardness: 0, chloride: 0 }))
  for (const i of [fill, strength, hardness, chloride]) expect(odd.belief.mean[i]!).toBeGreaterThanOrEqual(0)
})
