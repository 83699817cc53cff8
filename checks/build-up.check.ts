/**
 * Minerals that build up because evaporation leaves them behind.
 *
 * Cooling towers and boilers obey the same balance as a sump: what evaporates leaves, what is bled off (blowdown and drift, our carry-off) leaves as it is, and the
 * make-up replaces both. Make-up = evaporation + blowdown + drift: US DOE FEMP cooling-tower guidance; UFC 3-240-13FN (5000 over 250 µmho is 20 cycles; 40,000 lb/h of evaporation
 * then takes 2,105 of blowdown and 42,105 of feed; 800 over 300 is 2.67 cycles); a case sheet (evaporation 114,048 and windage 14,256 gal/day:
 * blowdown 23,760 and make-up 152,064 at 4 cycles, 2,037 and 130,341 at 8), read in copies and recomputed; a boiler (4000 kg/h of steam,
 * feed 80 and boiler 3500 ppm: 93.57 kg/h of blowdown), read. Tolerances: what half of a printed last digit does to the result.
 * Make-up saved by more cycles: computed here from M = E · C / (C − 1).
 *
 * The sump of 200 L, with 6 L a day of evaporation and 2 of carry-off, topped up with water alone of 200 ppm and starting there: plain mass balance, 355.5,
 * 556.1, 700.8 and 784.4 ppm after 30, 90, 180 and 365 days, towards 800; tolerance 0.05. The same sump with a mix as top-up, integrated here
 * step by step (Runge–Kutta, 1/100 day), apart from the closed form; tolerance 1e-9 of the value.
 */
import { expect, test } from 'vitest'
import { balance, type SteadySump } from '../packages/fluid/src/index.ts'

/** Anything that loses E as vapour and D as fluid; volume and strengths do not matter for the cycles. */
const tower = (evaporation: number, carryOff: number, makeUpHardness: number): SteadySump => ({
  volume: 1000,
  evaporation,
  carryOff,
  concentration: 0,
  target: 0,
  hardness: makeUpHardness,
  waterHardness: makeUpHardness,
  strength: 0,
  days: [],
})

test('a tower that evaporates 40,000 lb/h and bleeds 2,105 runs at 20 cycles, 250 µmho becoming 5000', () => {
  const { cycles, hardnessSteady } = balance(tower(40_000, 2105, 250))
  expect(Math.abs(cycles! - 20)).toBeLessThan(0.005)
  expect(Math.abs(hardnessSteady! - 5000)).toBeLessThan(1.3)
  expect(40_000 + 2105).toBe(42_105)
})

test('300 µmho that become 800 are 2.67 cycles', () => {
  // The bleed that makes 800 of 300: E / (800/300 − 1) = 0.6 E
  const { cycles, hardnessSteady } = balance(tower(100, 60, 300))
  expect(cycles).toBeCloseTo(2.67, 2)
  expect(hardnessSteady).toBeCloseTo(800, 9)
})

test.each([
  [4, 23_760, 152_064],
  [8, 2037, 130_341],
])('at %d cycles the tower of the case sheet bleeds %d and takes %d gal a day', (cycles, blowdown, makeUp) => {
  const found = balance(tower(114_048, blowdown + 14_256, 100))
  // A gallon a day of 16,293 moves the cycles by 7/16,293.
  expect(Math.abs(found.cycles! - cycles)).toBeLessThan(0.0005)
  expect(114_048 + blowdown + 14_256).toBe(makeUp)
})

test('a boiler of 4000 kg/h with 93.57 kg/h of blowdown holds 3500 ppm on feed of 80', () => {
  // 93.57 is given to 0.005: 3500 × 0.005 / 93.57 = 0.19 ppm
  expect(Math.abs(balance(tower(4000, 93.57, 80)).hardnessSteady! - 3500)).toBeLessThan(0.2)
})

test.each([
  [2, 4, 33.3],
  [2, 3, 25.0],
  [3, 6, 20.0],
  [2, 6, 40.0],
  [4, 6, 10.0],
])('from %d to %d cycles saves %d percent of the make-up', (from, to, saved) => {
  const evaporation = 100
  const makeUp = evaporation + evaporation / (from - 1)
  const carryOff = makeUp * (1 - saved / 100) - evaporation
  expect(balance(tower(evaporation, evaporation / (from - 1), 1)).cycles).toBeCloseTo(from, 12)
  // 0.05 % of the make-up is 0.05 % · M of bleed, and moves the cycles by E · 0.0005 M / D².
  const tolerance = (evaporation * 0.0005 * makeUp) / carryOff ** 2
  expect(Math.abs(balance(tower(evaporation, carryOff, 1)).cycles! - to)).toBeLessThan(tolerance + 1e-9)
})

const sump: SteadySump = {
  volume: 200,
  evaporation: 6,
  carryOff: 2,
  concentration: 8,
  target: 8,
  hardness: 200,
  waterHardness: 200,
  strength: 0,
  days: [30, 90, 180, 365],
}

test('a sump topped up with water of 200 ppm stands at 355.5, 556.1, 700.8 and 784.4 ppm after 30, 90, 180 and 365 days', () => {
  const { series } = balance(sump)
  for (const [index, ppm] of [355.5, 556.1, 700.8, 784.4].entries()) {
    expect(Math.abs(series[index]!.hardness - ppm)).toBeLessThanOrEqual(0.05)
  }
})

test('it heads for 800 ppm, which are 4 cycles, and never reaches them', () => {
  const found = balance({ ...sump, days: [3650], hardnessLimit: 800 })
  expect(found).toMatchObject({ cycles: 4, hardnessSteady: 800, dayAtLimit: null })
  expect(found.series[0]!.hardness).toBeLessThanOrEqual(800)
})

test('a top-up of strength x brings (1 − x) times that', () => {
  expect(balance({ ...sump, strength: 2 }).hardnessSteady).toBeCloseTo(0.98 * 800, 9)
})

test('the strength that holds the target is the target times carry-off over all that is lost', () => {
  const { strength: _, ...open } = sump
  const found = balance(open)
  expect(found.topUpStrength).toBeCloseTo(2, 12)
  for (const { concentration } of found.series) expect(concentration).toBeCloseTo(8, 10)
})

test('with depletion it is that much more', () => {
  // 8 · (2 + 0.01 · 200) / 8 = 4
  const { strength: _, ...open } = sump
  const found = balance({ ...open, depletion: 0.01 })
  expect(found.topUpStrength).toBeCloseTo(4, 12)
  for (const { concentration } of found.series) expect(concentration).toBeCloseTo(8, 10)
})

test('the closed form is what the rates add up to day by day', () => {
  const mix = { ...sump, strength: 5, depletion: 0.004 }
  const rates = ([c, h]: readonly [number, number]): readonly [number, number] => [
    (8 * 5 - 2 * c) / 200 - 0.004 * c,
    (8 * 0.95 * 200 - 2 * h) / 200,
  ]
  const moved = ([c, h]: readonly [number, number], [dc, dh]: readonly [number, number], by: number) =>
    [c + by * dc, h + by * dh] as const
  const step = 0.01
  let at: readonly [number, number] = [8, 200]
  for (let day = 1; day <= 90; day += 1) {
    for (let part = 0; part < 100; part += 1) {
      const k1 = rates(at)
      const k2 = rates(moved(at, k1, step / 2))
      const k3 = rates(moved(at, k2, step / 2))
      const k4 = rates(moved(at, k3, step))
      at = [0, 1].map((i) => at[i]! + (step / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!)) as unknown as [
        number,
        number,
      ]
    }
    const [found] = balance({ ...mix, days: [day] }).series
    expect(Math.abs(found!.concentration / at[0] - 1)).toBeLessThan(1e-9)
    expect(Math.abs(found!.hardness / at[1] - 1)).toBeLessThan(1e-9)
  }
})
