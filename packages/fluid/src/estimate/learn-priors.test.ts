import { expect, test } from 'vitest'
import { isAdoptionDay, learnPriors } from './learn-priors.ts'
import { publishedPriors } from './priors.ts'
import type { ShopEstimate } from './shop-estimate.ts'
import { carryOff, evaporation, full, pours, size } from './state.ts'
import { chance, normalFrom, reading, setup, shopOf, sumpOf } from './testing.ts'

test('what was learnt is adopted 4, 16 and 64 weeks after the first record', () => {
  const days = Array.from({ length: 900 }, (_, day) => day).filter((day) => isAdoptionDay(0, day))
  expect(days).toEqual([28, 112, 448])
  expect(isAdoptionDay(20_000, 20_028)).toBe(true)
  expect(isAdoptionDay(20_000, 20_000)).toBe(false)
})

/** A shop of sumps whose rates are known so well: drawn from a normal. */
function shopWithRates(
  sumps: number,
  { mean, sd, knownTo }: { mean: number; sd: number; knownTo: number },
): ShopEstimate {
  const names = Array.from({ length: sumps }, (_, i) => `s${i}`)
  const shop = shopOf(names.map((name) => setup(name)))
  const next = chance(11)
  for (const name of names) {
    const sump = sumpOf(shop, name)
    sump.dataAt = 1
    const { belief } = sump.branches[0]!
    // What is believed is off by as much as it is uncertain by.
    belief.mean[evaporation] = mean + Math.hypot(sd, knownTo) * normalFrom(next)
    belief.cov[evaporation * (size + 1)] = knownTo ** 2
  }
  return shop
}

test('from many sumps that are well known their own mean and spread are learnt', () => {
  const { mean, sd } = learnPriors(shopWithRates(400, { mean: Math.log(0.03), sd: 0.3, knownTo: 0.05 })).groups[
    'stand-alone'
  ]!.evaporation
  // The mean of 400 is good to 0.3 / 20, the spread to 0.3 / √800; the published ones count for four sumps.
  expect(Math.abs(mean - Math.log(0.03))).toBeLessThan(3 * 0.015 + 0.02)
  expect(Math.abs(sd - 0.3)).toBeLessThan(3 * 0.011 + 0.01)
})

test('that sumps are badly known is not taken for a difference between them', () => {
  const { sd } = learnPriors(shopWithRates(400, { mean: Math.log(0.02), sd: 0.2, knownTo: 0.4 })).groups['stand-alone']!
    .evaporation
  expect(sd).toBeLessThan(0.3)
})

test('two sumps have nothing in common that would speak for a third; three move the mean some way', () => {
  const published = publishedPriors.groups.default!.evaporation
  const learnt = (sumps: number) =>
    learnPriors(shopWithRates(sumps, { mean: Math.log(0.03), sd: 0, knownTo: 0.01 })).groups['stand-alone']!.evaporation
  expect(learnt(2)).toEqual(published)
  // The published mean weighs as half of four sumps: three to two for three that are known exactly, 0.6 of the way.
  const share = (learnt(3).mean - published.mean) / (Math.log(0.03) - published.mean)
  expect(share).toBeGreaterThan(0.4)
  expect(share).toBeLessThan(0.7)
})

test('a sump whose records are nonsense does not speak for the others', () => {
  const shop = shopWithRates(10, { mean: Math.log(0.02), sd: 0.1, knownTo: 0.05 })
  const plain = learnPriors(shop).groups['stand-alone']!.evaporation
  sumpOf(shop, 's3').branches[0]!.belief.mean[evaporation] = Math.log(0.02) + 8
  const moved = learnPriors(shop).groups['stand-alone']!.evaporation
  expect(moved.mean - plain.mean).toBeLessThan(0.25)
})

test('a shop without records learns what is published, as the next version', () => {
  const learnt = learnPriors(shopOf([setup('s')]))
  expect(learnt).toEqual({
    ...publishedPriors,
    version: 1,
    from: { sumps: 1, readings: 0, days: 0 },
    pours: { mean: 0, sd: expect.closeTo(publishedPriors.pours.sd, 9) },
    full: { mean: expect.closeTo(publishedPriors.full.mean, 9), sd: expect.closeTo(publishedPriors.full.sd, 9) },
  })
})

test('it says from how many sumps, readings and days it was learnt, and counts its versions on', () => {
  const events = [0, 7, 14, 21].map((day) => reading('s', day + 0.5, { brix: 8, seen: 190 }))
  const shop = shopOf([setup('s'), setup('t'), ...events])
  const learnt = learnPriors(shop)
  expect(learnt).toMatchObject({ version: 1, from: { sumps: 2, readings: 4, days: 22 } })
  expect(learnPriors({ ...shop, priors: learnt }).version).toBe(2)
})

test('kinds of sumps learn apart from each other', () => {
  const kinds = { central: 0.004, 'stand-alone': 0.03 }
  const sumps = Object.entries(kinds).flatMap(([group, rate]) =>
    [1, 2, 3].map((i) => ({ name: group + i, group, rate })),
  )
  const shop = shopOf(sumps.map(({ name, group }) => setup(name, { group })))
  for (const { name, rate } of sumps) {
    const sump = sumpOf(shop, name)
    sump.dataAt = 1
    sump.branches[0]!.belief.mean[carryOff] = Math.log(rate)
    sump.branches[0]!.belief.cov[carryOff * (size + 1)] = 0.01
  }
  const { groups } = learnPriors(shop)
  expect(groups.central!.carryOff.mean).toBeLessThan(groups.default!.carryOff.mean)
  expect(groups['stand-alone']!.carryOff.mean).toBeGreaterThan(groups.default!.carryOff.mean)
  expect(groups.default).toEqual(publishedPriors.groups.default)
})

test('what all pours and fills have in common is learnt over the shop', () => {
  const names = Array.from({ length: 40 }, (_, i) => `s${i}`)
  const shop = shopOf(names.map((name) => setup(name)))
  for (const name of names) {
    const sump = sumpOf(shop, name)
    sump.dataAt = 1
    const { mean, cov } = sump.branches[0]!.belief
    mean[pours] = 0.1
    mean[full] = 0.95
    cov[pours * (size + 1)] = 0.0001
    cov[full * (size + 1)] = 0.0001
  }
  const learnt = learnPriors(shop)
  expect(learnt.pours.mean).toBeGreaterThan(0.09)
  expect(learnt.full.mean).toBeLessThan(0.96)
})

test('readings that scatter more than expected widen the noise, less than expected narrow it, within bounds', () => {
  const withTally = (squares: number) => {
    const shop = shopOf([setup('s')])
    shop.tally = { readings: 1000, brix: { count: 1000, squares }, level: { count: 1000, squares } }
    return learnPriors(shop)
  }
  const { brixNoise, levelNoise, unrest } = publishedPriors
  // (1760 / 0.88 + 60) / 1060 = 1.943: √ = 1.394.
  const wide = withTally(1760)
  expect(wide.brixNoise.fixed).toBeCloseTo(brixNoise.fixed * Math.sqrt(2060 / 1060), 12)
  expect(wide.levelNoise).toBeCloseTo(levelNoise * Math.sqrt(2060 / 1060), 12)
  expect(wide.unrest).toBeCloseTo(unrest * Math.sqrt(2060 / 1060), 12)
  // As expected: the 0.88 that is left of a variance by what did not fit.
  expect(withTally(880).brixNoise.fixed).toBeCloseTo(brixNoise.fixed, 12)
  expect(withTally(500).brixNoise.fixed).toBeLessThan(brixNoise.fixed)
  expect(withTally(1e9).brixNoise).toEqual({ fixed: 0.09 * 2, share: 0.012 * 2 })
  // No adoption takes more than two fifths off: 0.6 × 0.012, and 0.6 × 0.09 is under the least of all.
  expect(withTally(0).brixNoise.fixed).toBe(0.055)
  expect(withTally(0).brixNoise.share).toBeCloseTo(0.0072, 12)
})
