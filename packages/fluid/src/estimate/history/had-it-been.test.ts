import { expect, test } from 'vitest'
import { publishedPriors } from '../priors.ts'
import { everyDay, keptSump, reading } from '../testing.ts'
import { hadItBeen } from './had-it-been.ts'

const shop = { calendar: everyDay, priors: publishedPriors }
const deionised = { hardness: 0, chloride: 0 }
const kept = () => {
  const { events, at } = keptSump('s', { weeks: 20 })
  return { told: { sump: 's', events, doubts: [] }, at }
}

test('the water that was poured is no other water', () => {
  const { told, at } = kept()
  const same = { hardness: 150, chloride: 40 }
  const { hardness, chloride } = hadItBeen(shop, told, { water: same, since: 0, at })!
  expect(hardness.asked).toBe(hardness.asPoured)
  expect(chloride.asked).toBe(chloride.asPoured)
})

test('had it been deionised from the charge on there would be next to no chloride', () => {
  const { told, at } = kept()
  const { chloride } = hadItBeen(shop, told, { water: deionised, since: 0, at })!
  // As poured: charged at 40 · 0.92, towards 40 · (1 − x) · 4.5 / 3 = 57 with a time constant of 67 days.
  expect(chloride.asPoured).toBeGreaterThan(45)
  expect(chloride.asPoured).toBeLessThan(65)
  expect(chloride.asked).toBeLessThan(2)
})

test('from a day on it washes out by e^(−D t / V): 70 days of 3 L in 200', () => {
  const { told, at } = kept()
  const since = at - 70
  const { chloride } = hadItBeen(shop, told, { water: deionised, since, at })!
  const before = hadItBeen(shop, told, { water: deionised, since, at: since })!.chloride.asPoured
  const left = Math.exp((-3 * 70) / 200)
  expect(chloride.asked).toBeGreaterThan(0.75 * left * before)
  expect(chloride.asked).toBeLessThan(1.3 * left * before)
})

test('pours before the day stay as they were, and a day to come changes nothing', () => {
  const { told, at } = kept()
  const { hardness } = hadItBeen(shop, told, { water: deionised, since: at + 1, at })!
  expect(hardness.asked).toBe(hardness.asPoured)
})

test('readings of minerals bind neither course: they differ in the water alone', () => {
  const { told, at } = kept()
  const strips = [20, 60, 120].map((day) => reading('s', day + 0.4, { hardness: 700, chloride: 300 }))
  const events = [...told.events, ...strips].toSorted((a, b) => a.at - b.at)
  const [plain, read] = [told, { ...told, events }].map(
    (one) => hadItBeen(shop, one, { water: deionised, since: 0, at })!,
  )
  expect(read!.hardness.asked).toBeCloseTo(plain!.hardness.asked, 1)
  expect(read!.hardness.asPoured).toBeCloseTo(plain!.hardness.asPoured, 1)
})

test('a sump that no record describes has no history', () => {
  expect(hadItBeen(shop, { sump: 's', events: [], doubts: [] }, { water: deionised, since: 0, at: 9 })).toBe(null)
})
