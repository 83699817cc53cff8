import fc from 'fast-check'
import { expect, test } from 'vitest'
import { balance, type SteadySump } from './balance.ts'

const sump: SteadySump = {
  volume: 200,
  evaporation: 6,
  carryOff: 2,
  concentration: 8,
  target: 8,
  hardness: 200,
  waterHardness: 200,
  days: [0, 30],
}

test('the top-up that holds the target is weaker than the target by the share that only evaporates', () => {
  // 8 × 2 / (6 + 2) = 2 %
  const { topUpStrength, strength, series } = balance(sump)
  expect(topUpStrength).toBe(2)
  expect(strength).toBe(2)
  expect(series.map(({ concentration }) => concentration)).toEqual([8, expect.closeTo(8, 12)])
})

test('depletion raises the strength that holds the target', () => {
  // 8 × (2 + 0.005 × 200) / 8 = 3 %
  const { topUpStrength, concentrationSteady } = balance({ ...sump, depletion: 0.005 })
  expect(topUpStrength).toBeCloseTo(3, 12)
  expect(concentrationSteady).toBeCloseTo(8, 12)
})

test('hardness heads for the cycles times what the water of the top-up brings', () => {
  // (6 + 2) / 2 = 4 cycles, 98 % of the top-up is water
  expect(balance(sump)).toMatchObject({ cycles: 4, hardnessSteady: 0.98 * 200 * 4 })
})

test('the series begins with the sump as it is', () => {
  expect(balance(sump).series[0]).toEqual({ day: 0, concentration: 8, hardness: 200 })
})

test('days are answered in the order asked', () => {
  expect(balance({ ...sump, days: [30, 0, 7] }).series.map(({ day }) => day)).toEqual([30, 0, 7])
})

test('without carry-off hardness grows along a straight line without end', () => {
  const { cycles, hardnessSteady, series, dayAtLimit } = balance({
    ...sump,
    carryOff: 0,
    strength: 0,
    hardnessLimit: 500,
  })
  expect({ cycles, hardnessSteady }).toEqual({ cycles: null, hardnessSteady: null })
  // 6 L a day of 200 mg/L into 200 L are 6 mg/L a day: 180 in 30 days, 300 in 50
  expect(series[1]?.hardness).toBeCloseTo(380, 12)
  expect(dayAtLimit).toBeCloseTo(50, 12)
})

test('hardly any carry-off is nearly a straight line', () => {
  const { series, dayAtLimit } = balance({ ...sump, carryOff: 1e-12, strength: 0, hardnessLimit: 500 })
  expect(series[1]?.hardness).toBeCloseTo(380, 8)
  expect(dayAtLimit).toBeCloseTo(50, 8)
})

test('the day at the limit is when the series passes it', () => {
  const { dayAtLimit } = balance({ ...sump, strength: 0, hardnessLimit: 600 })
  // 800 − 600 e^(−t/100) = 600: t = 100 ln 3
  expect(dayAtLimit).toBeCloseTo(100 * Math.log(3), 10)
  expect(balance({ ...sump, strength: 0, days: [dayAtLimit!] }).series[0]?.hardness).toBeCloseTo(600, 10)
})

test.each([
  ['is the steady value, never reached', 800, null],
  ['lies above the steady value', 801, null],
  ['is where the sump stands', 200, 0],
  ['lies below where the sump stands', 150, 0],
])('a limit that %s', (_, hardnessLimit, day) => {
  expect(balance({ ...sump, strength: 0, hardnessLimit }).dayAtLimit).toBe(day)
})

test('a sump at its limit is at it today, though its hardness is on the way down', () => {
  expect(balance({ ...sump, strength: 0, hardness: 900, hardnessLimit: 900 }).dayAtLimit).toBe(0)
})

test('without a limit there is no day', () => {
  expect(balance(sump).dayAtLimit).toBeNull()
})

test('a sump that loses nothing stays as it is', () => {
  const still = balance({ ...sump, evaporation: 0, carryOff: 0, hardnessLimit: 300 })
  expect(still).toMatchObject({ topUpStrength: null, cycles: null, hardnessSteady: null, dayAtLimit: null })
  expect(still.series[1]).toEqual({ day: 30, concentration: 8, hardness: 200 })
})

test('where no mix up to neat concentrate holds the target, there is no such strength', () => {
  // 8 × (0 + 0.5 × 200) / 6 would be 133 %
  expect(balance({ ...sump, carryOff: 0, depletion: 0.5 })).toMatchObject({ topUpStrength: null, strength: 100 })
})

test.each<[string, Partial<SteadySump>]>([
  ['volume is 0, expected above 0', { volume: 0 }],
  ['evaporation is -1', { evaporation: -1 }],
  ['carryOff is NaN', { carryOff: Number.NaN }],
  ['concentration is 101', { concentration: 101 }],
  ['target is -1', { target: -1 }],
  ['hardness is -1', { hardness: -1 }],
  ['waterHardness is -1', { waterHardness: -1 }],
  ['strength is 101', { strength: 101 }],
  ['depletion is -0.1', { depletion: -0.1 }],
  ['hardnessLimit is -1', { hardnessLimit: -1 }],
  ['days.1 is -1', { days: [0, -1] }],
])('%s is refused', (message, change) => {
  expect(() => balance({ ...sump, ...change })).toThrow(message)
})

const anySump = fc.record({
  volume: fc.double({ min: 20, max: 20_000, noNaN: true }),
  evaporation: fc.double({ min: 0, max: 500, noNaN: true }),
  carryOff: fc.double({ min: 0, max: 500, noNaN: true }),
  concentration: fc.double({ min: 0, max: 20, noNaN: true }),
  target: fc.double({ min: 0, max: 20, noNaN: true }),
  hardness: fc.double({ min: 0, max: 2000, noNaN: true }),
  waterHardness: fc.double({ min: 0, max: 1000, noNaN: true }),
  strength: fc.double({ min: 0, max: 100, noNaN: true }),
  depletion: fc.double({ min: 0, max: 0.1, noNaN: true }),
})

test('minerals are neither made nor lost: what came in less what went out is what is there', () => {
  fc.assert(
    fc.property(anySump, (any) => {
      // The series summed by Simpson's rule over a day of 1000 steps gives the hardness carried off, apart from the solution itself.
      const days = Array.from({ length: 1001 }, (_, step) => step / 1000)
      const { series } = balance({ ...any, days })
      const weights = days.map((_, i) => (i === 0 || i === 1000 ? 1 : i % 2 === 1 ? 4 : 2) / 3000)
      const carried = any.carryOff * series.reduce((sum, { hardness }, i) => sum + weights[i]! * hardness, 0)
      const brought = (any.evaporation + any.carryOff) * (1 - any.strength / 100) * any.waterHardness
      const gained = any.volume * (series.at(-1)!.hardness - any.hardness)
      expect(Math.abs(brought - carried - gained)).toBeLessThan(
        1e-7 * (1 + brought + carried + any.volume * any.hardness),
      )
    }),
  )
})

test('two stretches one after the other are one long stretch', () => {
  fc.assert(
    fc.property(anySump, fc.double({ min: 0, max: 100, noNaN: true }), (any, day) => {
      const [half, whole] = balance({ ...any, days: [day, 2 * day] }).series
      const { concentration, hardness } = half!
      fc.pre(concentration <= 100)
      const [again] = balance({ ...any, concentration, hardness, days: [day] }).series
      expect(again!.concentration / (1 + whole!.concentration)).toBeCloseTo(
        whole!.concentration / (1 + whole!.concentration),
        10,
      )
      expect(again!.hardness / (1 + whole!.hardness)).toBeCloseTo(whole!.hardness / (1 + whole!.hardness), 10)
    }),
  )
})

test('every figure is a number or openly unknown', () => {
  fc.assert(
    fc.property(anySump, (any) => {
      const { series, ...figures } = balance({ ...any, days: [0, 1e-300, 1, 1e6], hardnessLimit: 400 })
      for (const figure of Object.values(figures)) expect(figure).toSatisfy((x) => x === null || Number.isFinite(x))
      for (const { concentration, hardness } of series) {
        expect(concentration).toSatisfy(Number.isFinite)
        expect(hardness).toSatisfy(Number.isFinite)
      }
    }),
  )
})
