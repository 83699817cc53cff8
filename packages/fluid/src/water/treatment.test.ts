import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type TreatmentQuestion, treatment } from './treatment.ts'

const unit = { litresPerDay: 400, price: 3000, recovery: 0.75, rejection: 0.97, upkeepPerYear: 200 }
const polisher = { resinLitres: 10, capacityPerLitre: 20, price: 80 }
const shop: TreatmentQuestion = {
  demand: 200,
  tap: { tds: 300, hardness: 250, costPerLitre: 0.003 },
  unit,
  polisher: null,
  fluidSaving: 1500,
}

test('the unit must carry the worst day', () => {
  expect(treatment(shop)).toMatchObject({ capacityNeeded: 300, enough: true })
  expect(treatment({ ...shop, peak: 2 })).toMatchObject({ capacityNeeded: 400, enough: true })
  expect(treatment({ ...shop, peak: 2.01 })).toMatchObject({ enough: false })
})

test('what does not become permeate leaves with nearly all the salt', () => {
  const { feed, permeate, concentrate } = treatment(shop)
  expect(feed).toBeCloseTo(200 / 0.75, 10)
  expect(permeate.tds).toBeCloseTo(9, 10)
  expect(permeate.hardness).toBeCloseTo(7.5, 10)
  // (300 − 0.75 × 9) / 0.25
  expect(concentrate!.tds).toBeCloseTo(1173, 9)
  expect(concentrate!.litresPerDay).toBeCloseTo(200 / 3, 10)
})

test('a litre costs its feed, its share of the price and of the upkeep', () => {
  // 0.003 / 0.75 + (3000/5 + 200) / 73000
  const { costPerLitre, runningPerYear, paybackYears } = treatment(shop)
  expect(costPerLitre).toBeCloseTo(0.004 + 800 / 73_000, 12)
  // 24333.3 L to the drain at 0.003, and the upkeep
  expect(runningPerYear).toBeCloseTo(73 + 200, 9)
  expect(paybackYears).toBeCloseTo(3000 / (1500 - 273), 9)
})

test('over more years a litre costs less, and the payback stays', () => {
  const long = treatment({ ...shop, years: 10 })
  expect(long.costPerLitre).toBeCloseTo(0.004 + 500 / 73_000, 12)
  expect(long.paybackYears).toBe(treatment(shop).paybackYears)
})

test('a polisher takes the salt the membrane lets pass', () => {
  // 10 L × 20 g = 200 g; at 9 mg/L 22222 L; 80 / 22222 = 0.0036 a litre
  const found = treatment({ ...shop, polisher })
  expect(found.resinLife).toBeCloseTo(200_000 / 9, 8)
  expect(found.costPerLitre - treatment(shop).costPerLitre).toBeCloseTo(0.0036, 10)
})

test('resin on its own takes all the salt of the tap', () => {
  const found = treatment({ ...shop, unit: null, polisher })
  expect(found).toMatchObject({ enough: null, concentrate: null, feed: 200, paybackYears: null })
  expect(found.resinLife).toBeCloseTo(200_000 / 300, 9)
  expect(found.costPerLitre).toBeCloseTo(0.003 + 80 / (200_000 / 300), 12)
})

test('where the dissolved solids are unknown the hardness stands for them', () => {
  const found = treatment({ ...shop, tap: { ...shop.tap, tds: null }, polisher })
  expect(found.resinLife).toBeCloseTo(200_000 / 7.5, 8)
  expect(found.permeate.tds).toBeNull()
  expect(found.concentrate!.tds).toBeNull()
})

test('without salt the resin has no end', () => {
  expect(treatment({ ...shop, tap: { ...shop.tap, tds: 0 }, polisher })).toMatchObject({ resinLife: null })
})

test('a saving below the running costs never pays back', () => {
  expect(treatment({ ...shop, fluidSaving: 273 }).paybackYears).toBeNull()
  expect(treatment({ ...shop, fluidSaving: 274 }).paybackYears).toBeGreaterThan(2000)
})

test('all feed recovered leaves no concentrate to speak of', () => {
  expect(treatment({ ...shop, unit: { ...unit, recovery: 1 } }).concentrate).toEqual({ litresPerDay: 0, tds: null })
})

test.each<[string, Partial<TreatmentQuestion>]>([
  ['demand is 0, expected above 0', { demand: 0 }],
  ['peak is 0.9, expected at least 1', { peak: 0.9 }],
  ['tap.tds is -1', { tap: { ...shop.tap, tds: -1 } }],
  ['tap.hardness is NaN', { tap: { ...shop.tap, hardness: Number.NaN } }],
  ['tap.costPerLitre is -1', { tap: { ...shop.tap, costPerLitre: -1 } }],
  ['fluidSaving is -1', { fluidSaving: -1 }],
  ['years is 0, expected above 0', { years: 0 }],
  ['unit.litresPerDay is 0', { unit: { ...unit, litresPerDay: 0 } }],
  ['unit.price is -1', { unit: { ...unit, price: -1 } }],
  ['unit.recovery is 75', { unit: { ...unit, recovery: 75 } }],
  ['unit.rejection is 97', { unit: { ...unit, rejection: 97 } }],
  ['unit.upkeepPerYear is -1', { unit: { ...unit, upkeepPerYear: -1 } }],
  ['polisher.resinLitres is 0', { polisher: { ...polisher, resinLitres: 0 } }],
  ['polisher.capacityPerLitre is 0', { polisher: { ...polisher, capacityPerLitre: 0 } }],
  ['polisher.price is -1', { polisher: { ...polisher, price: -1 } }],
  ['unit is 0, expected a unit or a polisher', { unit: null }],
])('%s is refused', (message, change) => {
  expect(() => treatment({ ...shop, ...change })).toThrow(message)
})

test('salt is neither made nor lost: feed is permeate and concentrate', () => {
  const share = fc.double({ min: 0.05, max: 0.95, noNaN: true })
  fc.assert(
    fc.property(share, share, fc.double({ min: 1, max: 2000, noNaN: true }), (recovery, rejection, tds) => {
      const { feed, permeate, concentrate } = treatment({
        ...shop,
        tap: { ...shop.tap, tds },
        unit: { ...unit, recovery, rejection },
      })
      const out = 200 * permeate.tds! + concentrate!.litresPerDay * concentrate!.tds!
      expect(out / (feed * tds)).toBeCloseTo(1, 10)
      expect(200 + concentrate!.litresPerDay).toBeCloseTo(feed, 8)
    }),
  )
})
