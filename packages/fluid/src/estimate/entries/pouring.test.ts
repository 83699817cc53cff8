import { expect, test } from 'vitest'
import type { ShopEvent } from '../events.ts'
import { litresOf } from '../shop-estimate.ts'
import { bias, chloride, fill, hardness, scale, size, strength } from '../state.ts'
import { addition, charge, setup, shopOf, sumpOf, tell } from '../testing.ts'

/** A sump of which all is known: its mark, its fill, what it holds. */
function knownShop(ids: readonly string[], means: Record<number, number> = {}) {
  const shop = shopOf(ids.map((id) => setup(id)))
  for (const id of ids) {
    const sump = sumpOf(shop, id)
    const { mean, cov } = sump.branches[0]!.belief
    sump.dataAt = 0
    cov.fill(0)
    mean.fill(0)
    // Losses next to none, full at the mark.
    for (const i of [4, 5]) mean[i] = -30
    mean[12] = 1
    Object.assign(mean, { [fill]: 0.75, [strength]: 8, [hardness]: 100, [chloride]: 80, ...means })
  }
  return shop
}
const branchOf = (shop: ReturnType<typeof knownShop>, id = 's') => sumpOf(shop, id).branches[0]!
const water = { hardness: 200, chloride: 40 }

test('a measured addition brings its litres and what is in them', () => {
  const shop = knownShop(['s'])
  tell(shop, [addition('s', 1e-9, { amount: 50, strength: 5, water })])
  const { mean } = branchOf(shop).belief
  // 150 L at 8 % and 50 L at 5 %: 7.25 %; chloride (150 · 80 + 50 · 38) / 200 = 69.5.
  expect(litresOf(branchOf(shop), sumpOf(shop))).toBeCloseTo(200, 5)
  expect(mean[strength]).toBeCloseTo(7.25, 5)
  expect(mean[chloride]).toBeCloseTo(69.5, 5)
})

test('in a sump that is larger than its plate the same litres are a smaller share', () => {
  const shop = knownShop(['s'], { [scale]: Math.log(1.25) })
  tell(shop, [addition('s', 1e-9, { amount: 50, strength: 5, water })])
  expect(branchOf(shop).belief.mean[fill]).toBeCloseTo(0.75 + 0.2, 3)
})

test('a fill to the mark is what was missing; one of which nobody said how much is taken for about that', () => {
  const [toMark, unsaid] = [knownShop(['s']), knownShop(['s'])]
  tell(toMark, [addition('s', 1e-9, { amount: 'to-mark', strength: 5 })])
  tell(unsaid, [addition('s', 1e-9, { amount: null, strength: 5 })])
  const variance = (shop: typeof toMark) => branchOf(shop).belief.cov[fill * (size + 1)]!
  for (const shop of [toMark, unsaid]) expect(branchOf(shop).belief.mean[fill]).toBeCloseTo(1, 9)
  expect(variance(unsaid)).toBeGreaterThan(4 * variance(toMark))
})

test('a pour of no litres changes nothing', () => {
  const shop = knownShop(['s'])
  tell(shop, [addition('s', 1e-9, { amount: 0, strength: 5 })])
  expect(branchOf(shop).belief.mean[strength]).toBeCloseTo(8, 6)
})

test('a strength that nobody wrote is what is usually poured, and doubted', () => {
  const [said, unsaid] = [knownShop(['s']), knownShop(['s'])]
  for (const [shop, now] of [
    [said, 5],
    [unsaid, null],
  ] as const) {
    sumpOf(shop).usualStrength = 5
    tell(shop, [addition('s', 1e-9, { amount: 50, strength: now })])
  }
  expect(branchOf(unsaid).belief.mean[strength]).toBeCloseTo(branchOf(said).belief.mean[strength]!, 9)
  expect(branchOf(unsaid).belief.cov[strength * (size + 1)]!).toBeGreaterThan(
    4 * branchOf(said).belief.cov[strength * (size + 1)]!,
  )
})

test('each product keeps its share of the concentrate', () => {
  const shop = knownShop(['s'])
  tell(shop, [addition('s', 1e-9, { amount: 50, strength: 6, fluid: 'b' })])
  // 150 · 8 = 1200 of a, 50 · 6 = 300 of b.
  const share = (fluid: string) => branchOf(shop).fluids.find((one) => one.fluid === fluid)?.share
  expect(share('a')).toBeCloseTo(0.8, 5)
  expect(share('b')).toBeCloseTo(0.2, 5)
})

test('a product of which next to nothing is left is forgotten', () => {
  const shop = knownShop(['s'])
  // A heel of 0.1 L of 200: 0.0005 of the concentrate.
  tell(shop, [charge('s', 1e-9, { volume: 199, strength: 8, fluid: 'b', heldBack: 0.1 })])
  expect(branchOf(shop).fluids).toEqual([{ fluid: 'b', share: 1 }])
})

test('a change-over with a tenth of the old fluid held back holds both, and reads right', () => {
  const shop = knownShop(['s'], { [fill]: 1, [bias]: 0 })
  tell(shop, [charge('s', 1e-9, { volume: 180, strength: 6, fluid: 'b', heldBack: 20, water })])
  const { belief, fluids } = branchOf(shop)
  // 20 L at 8 % and 180 L at 6 %: 1.6 + 10.8 = 12.4 L in 200 L, 6.2 %.
  expect(belief.mean[strength]).toBeCloseTo(6.2, 1)
  const share = (fluid: string) => fluids.find((one) => one.fluid === fluid)!.share
  expect(share('a')).toBeCloseTo(1.6 / 12.4, 2)
  expect(share('b')).toBeCloseTo(10.8 / 12.4, 2)
})

test('a heel that nobody wrote is small in a sump that was used, next to none in a new one', () => {
  const used = knownShop(['s'], { [fill]: 1 })
  tell(used, [charge('s', 1e-9, { volume: null, strength: 6, fluid: 'b' })])
  const fresh = shopOf([setup('s'), charge('s', 1e-9, { volume: null, strength: 6, fluid: 'b' })])
  const old = (shop: typeof used) => branchOf(shop).fluids.find(({ fluid }) => fluid === 'a')?.share ?? 0
  expect(old(used)).toBeGreaterThan(0.03)
  expect(old(used)).toBeLessThan(0.15)
  expect(old(fresh)).toBeLessThan(0.03)
})

test('a charge that repeats the plate measures nothing; another figure does', () => {
  const scaleVariance = (volume: number) =>
    branchOf(shopOf([setup('s'), charge('s', 0.1, { volume, heldBack: 0 })])).belief.cov[scale * (size + 1)]!
  expect(scaleVariance(150)).toBeLessThan(0.75 * scaleVariance(200))
  expect(scaleVariance(202)).toBeCloseTo(scaleVariance(200), 9)
})

test('a draw-off takes its litres as they are; of one without litres a tenth is supposed', () => {
  const shop = knownShop(['s'])
  tell(shop, [{ kind: 'drawoff', id: 'd', at: 1e-9, sump: 's', volume: 50 }])
  expect(branchOf(shop).belief.mean[fill]).toBeCloseTo(0.5, 6)
  expect(branchOf(shop).belief.mean[strength]).toBeCloseTo(8, 6)
  const unsaid = knownShop(['s'])
  tell(unsaid, [{ kind: 'drawoff', id: 'd', at: 1e-9, sump: 's', volume: null }])
  expect(branchOf(unsaid).belief.mean[fill]).toBeCloseTo(0.65, 6)
  expect(branchOf(unsaid).belief.cov[fill * (size + 1)]!).toBeGreaterThan(0.005)
})

const transfer = (volume: number | null, to: string | null): ShopEvent => ({
  kind: 'transfer',
  id: 't',
  at: 1e-9,
  sump: 's',
  to,
  volume,
})

test('what leaves one sump by a transfer comes to the other: litres, concentrate, minerals', () => {
  const shop = knownShop(['s', 't'])
  Object.assign(branchOf(shop, 't').belief.mean, { [fill]: 0.5, [strength]: 4, [chloride]: 20 })
  const held = (i: number) =>
    ['s', 't'].reduce((sum, id) => {
      const { mean } = branchOf(shop, id).belief
      return sum + 200 * mean[fill]! * (i === fill ? 1 : mean[i]!)
    }, 0)
  const before = [fill, strength, chloride, hardness].map(held)
  tell(shop, [transfer(40, 't')])
  const after = [fill, strength, chloride, hardness].map(held)
  for (const [i, value] of before.entries()) expect(Math.abs(after[i]! / value - 1)).toBeLessThan(1e-6)
  // 100 L at 4 % and 40 L at 8 %: 720 / 140.
  expect(branchOf(shop, 't').belief.mean[strength]).toBeCloseTo(720 / 140, 6)
  expect(branchOf(shop).belief.mean[strength]).toBeCloseTo(8, 6)
  expect(sumpOf(shop, 't').dataAt).toBe(1e-9)
})

test('a transfer brings its product along', () => {
  const shop = knownShop(['s', 't'])
  branchOf(shop).fluids = [{ fluid: 'b', share: 1 }]
  tell(shop, [transfer(50, 't')])
  // 150 · 8 of a and 50 · 8 of b.
  expect(branchOf(shop, 't').fluids.find(({ fluid }) => fluid === 'b')!.share).toBeCloseTo(0.25, 6)
})

test('a transfer away from the sumps, into itself or into one nobody knows only takes out', () => {
  for (const to of [null, 's', 'nowhere']) {
    const shop = knownShop(['s'])
    tell(shop, [transfer(50, to)])
    expect(branchOf(shop).belief.mean[fill]).toBeCloseTo(0.5, 6)
  }
})

test('how strong and of which water pours are is remembered', () => {
  const shop = knownShop(['s'])
  tell(shop, [addition('s', 1e-9, { strength: 4, water })])
  expect(sumpOf(shop)).toMatchObject({ usualStrength: 4, usualWater: water, pouredSince: true })
})
