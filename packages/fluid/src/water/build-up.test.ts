import fc from 'fast-check'
import { expect, test } from 'vitest'
import { balance } from '../sump/balance.ts'
import { type BuildUpQuestion, buildUp, type Minerals, type TopUpWater } from './build-up.ts'

const none: Minerals = { hardness: null, chloride: null, conductivity: null }
const tap: TopUpWater = { id: 'tap', from: 0, strength: 0, hardness: 200, chloride: 40, conductivity: 0.6 }
const deionised: TopUpWater = { id: 'di', from: 100, strength: 0, hardness: 0, chloride: 0, conductivity: 0 }
const sump: BuildUpQuestion = {
  fillVolume: 200,
  volume: 200,
  evaporation: 6,
  carryOff: 2,
  now: { hardness: 200, chloride: 40, conductivity: 0.6 },
  waters: [tap],
  limits: none,
  days: [0, 30],
}

test('under one water it is the balance of a steady sump', () => {
  const steadySump = balance({
    volume: 200,
    evaporation: 6,
    carryOff: 2,
    concentration: 0,
    target: 0,
    hardness: 200,
    waterHardness: 200,
    strength: 0,
    days: [30, 90],
    hardnessLimit: 600,
  })
  const found = buildUp({ ...sump, days: [30, 90], limits: { ...none, hardness: 600 } })
  expect(found.series.map(({ hardness }) => hardness)).toEqual(steadySump.series.map(({ hardness }) => hardness))
  expect(found.atLimit.hardness).toEqual({ reached: steadySump.dayAtLimit, left: null })
  expect(found).toMatchObject({ cycles: 4, steady: { hardness: 800, chloride: 160 } })
})

test('from the day the water changes the sump heads elsewhere, without a jump', () => {
  const { series, steady } = buildUp({ ...sump, waters: [tap, deionised], days: [99.999999, 100, 150] })
  const atChange = 800 - 600 * Math.exp(-1)
  expect(series[0]!.hardness).toBeCloseTo(atChange, 4)
  expect(series[1]!.hardness).toBeCloseTo(atChange, 10)
  // Nothing comes in, a hundredth leaves a day.
  expect(series[2]!.hardness).toBeCloseTo(atChange * Math.exp(-0.5), 10)
  expect(steady.hardness).toBe(0)
})

test('the day at a limit and the day back under it can lie under different waters', () => {
  // up: 800 − 600 e^(−t/100) = 500 at 100 ln 2; at 100 it stands at 579.27, down to 500 after 100 ln (579.27/500)
  const { hardness } = buildUp({
    ...sump,
    waters: [tap, deionised],
    limits: { ...none, hardness: 500 },
  }).atLimit
  expect(hardness.reached).toBeCloseTo(100 * Math.log(2), 9)
  expect(hardness.left).toBeCloseTo(100 + 100 * Math.log((800 - 600 / Math.E) / 500), 9)
})

test('a change that comes in time keeps the sump under its limit', () => {
  const early = { ...deionised, from: 30 }
  const limits = { ...none, hardness: 500 }
  expect(buildUp({ ...sump, waters: [tap, early], limits }).atLimit.hardness).toEqual({ reached: null, left: null })
})

test('a sump above its limit is there today, and a sump on its way down leaves it', () => {
  const high = { ...sump, now: { ...sump.now, hardness: 900 }, limits: { ...none, hardness: 850 } }
  const { reached, left } = buildUp(high).atLimit.hardness
  expect(reached).toBe(0)
  // 800 + 100 e^(−t/100) = 850
  expect(left).toBeCloseTo(100 * Math.log(2), 9)
  expect(buildUp({ ...high, limits: { ...none, hardness: 790 } }).atLimit.hardness).toEqual({ reached: 0, left: null })
})

test('a sump that stands still at its limit does not leave it', () => {
  const still = { ...sump, now: { ...sump.now, hardness: 800 }, limits: { ...none, hardness: 800 } }
  expect(buildUp(still).atLimit.hardness).toEqual({ reached: 0, left: null })
})

test('a sump read low is judged filled up to its mark with the first water', () => {
  // 150 L at 300 and 50 L at 200: 275
  const low = { ...sump, volume: 150, now: { ...sump.now, hardness: 300 } }
  expect(buildUp(low).series[0]!.hardness).toBeCloseTo(275, 12)
  expect(buildUp({ ...low, limits: { ...none, hardness: 290 } }).atLimit.hardness.reached).toBeGreaterThan(0)
})

test('a top-up of some strength brings that much less mineral', () => {
  expect(buildUp({ ...sump, waters: [{ ...tap, strength: 5 }] }).steady.hardness).toBeCloseTo(0.95 * 800, 9)
})

test('without carry-off there is no end', () => {
  const found = buildUp({ ...sump, carryOff: 0, waters: [tap, deionised], days: [50, 150] })
  // 6 L of 200 mg/L into 200 L: 6 mg/L a day for 100 days, then none
  expect(found.series.map(({ hardness }) => hardness)).toEqual([expect.closeTo(500, 9), expect.closeTo(800, 9)])
  expect(found).toMatchObject({ cycles: null, steady: { hardness: null } })
})

test('a mineral that is unknown now or in a water is unknown ahead', () => {
  const found = buildUp({ ...sump, now: { ...sump.now, chloride: null }, waters: [{ ...tap, conductivity: null }] })
  expect(found.series[1]).toMatchObject({ chloride: null, conductivity: null, hardness: expect.closeTo(355.5, 1) })
  expect(found.steady).toMatchObject({ chloride: null, conductivity: null })
})

test('days are answered in the order asked', () => {
  expect(buildUp({ ...sump, waters: [tap, deionised], days: [120, 0, 100] }).series.map(({ day }) => day)).toEqual([
    120, 0, 100,
  ])
})

test.each<[string, Partial<BuildUpQuestion>]>([
  ['fillVolume is 0, expected above 0', { fillVolume: 0 }],
  ['volume is 201, expected at least 0 and at most 200', { volume: 201 }],
  ['evaporation is -1', { evaporation: -1 }],
  ['carryOff is NaN', { carryOff: Number.NaN }],
  ['now.hardness is -1', { now: { ...none, hardness: -1 } }],
  ['limits.chloride is -1', { limits: { ...none, chloride: -1 } }],
  ['waters is 0, expected at least 1', { waters: [] }],
  ['waters.0.from is 1, expected 0', { waters: [{ ...tap, from: 1 }] }],
  ['waters.1.from is 0, expected above 0', { waters: [tap, tap] }],
  ['waters.0.strength is 101', { waters: [{ ...tap, strength: 101 }] }],
  ['waters.0.conductivity is -1', { waters: [{ ...tap, conductivity: -1 }] }],
  ['days.0 is -1', { days: [-1] }],
])('%s is refused', (message, change) => {
  expect(() => buildUp({ ...sump, ...change })).toThrow(message)
})

const anySequence = fc.record({
  fillVolume: fc.double({ min: 20, max: 5000, noNaN: true }),
  evaporation: fc.double({ min: 0, max: 200, noNaN: true }),
  carryOff: fc.double({ min: 0, max: 200, noNaN: true }),
  start: fc.double({ min: 0, max: 2000, noNaN: true }),
  waters: fc.array(
    fc.record({
      lasts: fc.double({ min: 0.5, max: 200, noNaN: true }),
      strength: fc.double({ min: 0, max: 20, noNaN: true }),
      hardness: fc.double({ min: 0, max: 1000, noNaN: true }),
    }),
    { minLength: 1, maxLength: 4 },
  ),
})

const questionOf = ({
  fillVolume,
  evaporation,
  carryOff,
  start,
  waters,
}: typeof anySequence extends fc.Arbitrary<infer T> ? T : never): BuildUpQuestion => {
  let from = 0
  const sequence = waters.map(({ lasts, ...water }, index) => {
    const entry = { ...none, id: String(index), from, ...water }
    from += lasts
    return entry
  })
  return {
    ...sump,
    fillVolume,
    volume: fillVolume,
    evaporation,
    carryOff,
    now: { ...none, hardness: start },
    waters: sequence,
  }
}

test('minerals are neither made nor lost over any sequence of waters', () => {
  fc.assert(
    fc.property(anySequence, fc.double({ min: 0, max: 500, noNaN: true }), (any, day) => {
      const question = questionOf(any)
      const { fillVolume, evaporation, carryOff, waters } = question
      // What each water brought by then has decayed since; summed up litre by litre of carry-off it is what is there.
      let expected = any.start * Math.exp((-carryOff / fillVolume) * day)
      for (const [index, { from, strength, hardness }] of waters.entries()) {
        const to = Math.min(day, waters[index + 1]?.from ?? Number.POSITIVE_INFINITY)
        if (to <= from) continue
        const aDay = ((evaporation + carryOff) * (1 - strength / 100) * hardness!) / fillVolume
        const rate = carryOff / fillVolume
        const left = rate < 1e-12 ? to - from : (Math.exp(-rate * (day - to)) - Math.exp(-rate * (day - from))) / rate
        expected += aDay * left
      }
      const found = buildUp({ ...question, days: [day] }).series[0]!.hardness!
      expect(found).toBeGreaterThanOrEqual(0)
      expect(Math.abs(found - expected)).toBeLessThan(1e-7 * (1 + expected))
    }),
  )
})

test('at the day at a limit the mineral is at it, and before it under it', () => {
  fc.assert(
    fc.property(anySequence, fc.double({ min: 1, max: 3000, noNaN: true }), (any, limit) => {
      const question = { ...questionOf(any), limits: { ...none, hardness: limit } }
      const { reached, left } = buildUp(question).atLimit.hardness
      if (reached === null) return
      const at = (day: number) => buildUp({ ...question, days: [day] }).series[0]!.hardness!
      if (reached > 0) expect(at(reached)).toBeCloseTo(limit, 5)
      else expect(at(0)).toBeGreaterThanOrEqual(limit * (1 - 1e-12))
      if (reached > 0.01) expect(at(reached * 0.99)).toBeLessThan(limit + 1e-6)
      if (left !== null) expect(at(left)).toBeCloseTo(limit, 5)
    }),
  )
})
