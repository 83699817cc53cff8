import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type BlendQuestion, type BlendWater, blendWaters, makeUpLimits } from './blend.ts'

const tap: BlendWater = { id: 'tap', hardness: 300, chloride: 60, sulfate: 40, nitrate: 30, cost: 0.002 }
const ro: BlendWater = { id: 'ro', hardness: 10, chloride: 5, sulfate: 2, nitrate: 3, cost: 0.01 }
const rain: BlendWater = { id: 'rain', hardness: 20, chloride: 2, sulfate: 1, nitrate: 5, cost: 0.004 }

function blended(question: Partial<BlendQuestion>) {
  const blend = blendWaters({ waters: [tap, ro], limits: {}, volume: 200, ...question })
  if (blend.outcome !== 'blend') throw new Error(blend.outcome)
  return blend
}

const withoutCost = (...waters: BlendWater[]) => waters.map(({ cost: _, ...water }) => water)

test('the cheapest blend inside a limit lies on it', () => {
  // 300 f + 10 (1 − f) = 100: f = 90/290
  const { parts, hardness, chloride, cost, costPerLitre } = blended({ limits: { hardness: { high: 100 } } })
  expect(parts.map(({ id }) => id)).toEqual(['tap', 'ro'])
  expect(parts[0]!.fraction).toBeCloseTo(90 / 290, 10)
  expect(parts[0]!.volume).toBeCloseTo((200 * 90) / 290, 8)
  expect(hardness).toBeCloseTo(100, 8)
  expect(chloride).toBeCloseTo((60 * 90 + 5 * 200) / 290, 8)
  expect(costPerLitre).toBeCloseTo((0.002 * 90 + 0.01 * 200) / 290, 12)
  expect(cost).toBeCloseTo(200 * costPerLitre!, 12)
})

test('without limits the cheapest water is taken alone', () => {
  expect(blended({}).parts).toEqual([{ id: 'tap', fraction: 1, volume: 200 }])
})

test('a low limit of hardness is held as well: a fresh charge wants some', () => {
  const { hardness, parts } = blended({
    waters: [
      { ...tap, cost: 0.02 },
      { ...ro, cost: 0.01 },
    ],
    limits: { hardness: { low: 150, high: 250 } },
  })
  expect(hardness).toBeCloseTo(150, 8)
  expect(parts).toHaveLength(2)
})

// Tap 300, reverse osmosis 10: (100 − 10) / 290 of the tap is the most that keeps under 100.
test('without costs as little as possible of the purer water is taken', () => {
  const limits = { hardness: { high: 100 } }
  const { parts, cost, costPerLitre } = blended({ waters: withoutCost(tap, ro), limits })
  expect(parts.map(({ id }) => id)).toEqual(['tap', 'ro'])
  expect(parts[0]!.fraction).toBeCloseTo(90 / 290, 8)
  expect({ cost, costPerLitre }).toEqual({ cost: null, costPerLitre: null })
})

test('without costs the kind tells which water is purer, where every kind is known', () => {
  const waters: BlendWater[] = [
    { id: 'rain', kind: 'well', hardness: 0 },
    { id: 'di', kind: 'deionised', hardness: 5 },
    { id: 'ro', kind: 'reverse-osmosis', hardness: 10 },
  ]
  const limits = { hardness: { high: 20 } }
  expect(blended({ waters, limits }).parts.map(({ id }) => id)).toEqual(['rain'])
  expect(blended({ waters: waters.slice(1), limits }).parts.map(({ id }) => id)).toEqual(['ro'])
})

test('without costs the middle of the hardness band is aimed at, with no more waters than it takes', () => {
  const band = { hardness: { low: 80, high: 120 } }
  const { parts, hardness } = blended({ waters: withoutCost(tap, ro, rain), limits: band })
  expect(parts.map(({ id }) => id)).toEqual(['tap', 'ro'])
  expect(hardness).toBeCloseTo(100, 8)
})

test('of waters that fit equally, the first named is taken', () => {
  const [a, b] = withoutCost({ ...ro, id: 'a' }, { ...ro, id: 'b' })
  expect(blended({ waters: [a!, b!], limits: { hardness: { high: 50 } } }).parts[0]!.id).toBe('a')
  expect(blended({ waters: [b!, a!], limits: { hardness: { high: 50 } } }).parts[0]!.id).toBe('b')
})

test('of equally cheap blends the one of fewer waters is taken', () => {
  // Half of each neighbour costs what the middle one does.
  const waters: BlendWater[] = [
    { id: 'soft', hardness: 0, cost: 3 },
    { id: 'hard', hardness: 200, cost: 1 },
    { id: 'middle', hardness: 100, cost: 2 },
  ]
  expect(blended({ waters, limits: { hardness: { low: 100, high: 100 } } }).parts).toEqual([
    { id: 'middle', fraction: 1, volume: 200 },
  ])
})

test('three limits can need three waters', () => {
  const waters: BlendWater[] = [
    { id: 'a', hardness: 300, chloride: 0, nitrate: 0, cost: 1 },
    { id: 'b', hardness: 0, chloride: 300, nitrate: 0, cost: 1 },
    { id: 'c', hardness: 0, chloride: 0, nitrate: 300, cost: 1 },
  ]
  const third = { high: 100 }
  const { parts } = blended({ waters, limits: { hardness: third, chloride: third, nitrate: third } })
  for (const { fraction } of parts) expect(fraction).toBeCloseTo(1 / 3, 9)
  expect(parts).toHaveLength(3)
})

test('softened water is left out and named', () => {
  const softened: BlendWater = { ...tap, id: 'soft', kind: 'softened', hardness: 5, cost: 0.001 }
  expect(blended({ waters: [softened, tap, ro], limits: { hardness: { high: 100 } } })).toMatchObject({
    parts: [{ id: 'tap' }, { id: 'ro' }],
    leftOut: ['soft'],
  })
  expect(blendWaters({ waters: [softened], limits: {}, volume: 1 })).toEqual({
    outcome: 'only-softened',
    leftOut: ['soft'],
  })
})

test('a limit that no water meets is named with the nearest that can be reached', () => {
  const found = blendWaters({
    waters: [tap, ro],
    limits: { hardness: { high: 200 }, chloride: { high: 4 } },
    volume: 1,
  })
  expect(found).toMatchObject({
    outcome: 'conflict',
    conflict: [{ mineral: 'chloride', end: 'high', limit: 4, reach: expect.closeTo(5, 8) }],
  })
})

test('limits that cannot hold together are named, and no others', () => {
  // hardness 200 takes 190/290 of tap: chloride 41.03; chloride 20 allows 15/55: hardness 89.09
  const limits = { hardness: { low: 200 }, chloride: { high: 20 }, sulfate: { high: 50 }, nitrate: { high: 50 } }
  expect(blendWaters({ waters: [tap, ro], limits, volume: 1 })).toMatchObject({
    outcome: 'conflict',
    conflict: [
      { mineral: 'hardness', end: 'low', limit: 200, reach: expect.closeTo(10 + (290 * 15) / 55, 6) },
      { mineral: 'chloride', end: 'high', limit: 20, reach: expect.closeTo(5 + (55 * 190) / 290, 6) },
    ],
  })
})

test('a mineral nobody asks for may be unknown, and then is unknown in the blend', () => {
  expect(blended({ waters: [{ id: 'tap', hardness: 100 }], limits: { hardness: { high: 100 } } })).toMatchObject({
    hardness: 100,
    chloride: null,
    cost: null,
  })
  // Unknown in a water that is not used does not matter.
  expect(blended({ waters: [{ ...tap, nitrate: undefined }, ro], limits: { hardness: { high: 10 } } })).toMatchObject({
    nitrate: 3,
  })
})

test('a sump’s limits divided by its cycles are those of its make-up', () => {
  const sumpLimits = { hardness: { low: 100, high: 400 }, chloride: { high: 80 } }
  expect(makeUpLimits({ sumpLimits, cycles: 4 })).toEqual({ hardness: { low: 25, high: 100 }, chloride: { high: 20 } })
  expect(makeUpLimits({ sumpLimits: {}, cycles: 1 })).toEqual({})
  expect(() => makeUpLimits({ sumpLimits, cycles: 0.9 })).toThrow('cycles is 0.9, expected at least 1')
  expect(() => makeUpLimits({ sumpLimits: { chloride: { high: -1 } }, cycles: 2 })).toThrow(
    'sumpLimits.chloride.high is -1',
  )
})

test.each<[string, Partial<BlendQuestion>]>([
  ['waters is 0, expected at least 1', { waters: [] }],
  ['volume is 0, expected above 0', { volume: 0 }],
  ['waters.1.id is 1, expected each id once', { waters: [tap, tap] }],
  ['waters.0.chloride is NaN', { waters: [{ id: 'a', hardness: 1 }], limits: { chloride: { high: 1 } } }],
  ['waters.0.hardness is -1', { waters: [{ id: 'a', hardness: -1 }] }],
  ['waters.1.cost is NaN', { waters: [tap, { id: 'b' }] }],
  ['waters.0.cost is -1', { waters: [{ ...tap, cost: -1 }] }],
  ['limits.hardness.high is 10, expected at least 20', { limits: { hardness: { low: 20, high: 10 } } }],
  ['limits.nitrate.high is NaN', { limits: { nitrate: { high: Number.NaN } } }],
])('%s is refused', (message, change) => {
  expect(() => blendWaters({ waters: [tap, ro], limits: {}, volume: 1, ...change })).toThrow(message)
})

const mg = fc.integer({ min: 0, max: 500 })
const anyWater = fc.record({
  hardness: mg,
  chloride: mg,
  sulfate: mg,
  nitrate: mg,
  cost: fc.integer({ min: 0, max: 100 }),
})
const anyWaters = fc
  .array(anyWater, { minLength: 1, maxLength: 5 })
  .map((all) => all.map((water, index) => ({ id: `w${index}`, ...water })))
const anyLimits = fc.record(
  {
    hardness: fc.tuple(mg, mg).map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) })),
    chloride: fc.record({ high: mg }),
    sulfate: fc.record({ high: mg }),
    nitrate: fc.record({ high: mg }),
  },
  { requiredKeys: [] },
)

test('a blend keeps every limit, is whole, and what went in is what is there', () => {
  fc.assert(
    fc.property(anyWaters, anyLimits, fc.boolean(), (waters, limits, priced) => {
      const blend = blendWaters({ waters: priced ? waters : withoutCost(...waters), limits, volume: 100 })
      if (blend.outcome !== 'blend') return
      const shares = waters.map(({ id }) => blend.parts.find((part) => part.id === id)?.fraction ?? 0)
      expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
      for (const mineral of ['hardness', 'chloride', 'sulfate', 'nitrate'] as const) {
        const inIt = waters.reduce((sum, water, index) => sum + water[mineral] * shares[index]!, 0)
        expect(blend[mineral]).toBeCloseTo(inIt, 9)
        expect(inIt).toBeLessThanOrEqual((limits[mineral]?.high ?? 1e9) + 1e-6)
      }
      expect(blend.hardness).toBeGreaterThanOrEqual((limits.hardness?.low ?? 0) - 1e-6)
    }),
  )
})

test('of the limits in conflict none is idle: without any one of them the others hold', () => {
  fc.assert(
    fc.property(anyWaters, anyLimits, (waters, limits) => {
      const found = blendWaters({ waters, limits, volume: 100 })
      if (found.outcome !== 'conflict') return
      expect(found.conflict.length).toBeGreaterThan(0)
      for (const idle of found.conflict) {
        const others = found.conflict.filter((limit) => limit !== idle)
        const rest: Record<string, Record<string, number>> = {}
        for (const { mineral, end, limit } of others) rest[mineral] = { ...rest[mineral], [end]: limit }
        expect(blendWaters({ waters, limits: rest, volume: 100 }).outcome).toBe('blend')
        // And the limit itself lies beyond what can be reached beside them.
        if (idle.end === 'high') expect(idle.reach).toBeGreaterThan(idle.limit)
        else expect(idle.reach).toBeLessThan(idle.limit)
      }
    }),
  )
})

test('no blend of two of the waters that keeps the limits is cheaper', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(anyWaters, anyLimits, share, (waters, limits, share) => {
      const blend = blendWaters({ waters, limits, volume: 1 })
      const [a, b] = [waters[0]!, waters.at(-1)!]
      const mixed = (of: 'hardness' | 'chloride' | 'sulfate' | 'nitrate' | 'cost') =>
        share * a[of] + (1 - share) * b[of]
      const fits = (['hardness', 'chloride', 'sulfate', 'nitrate'] as const).every(
        (mineral) =>
          mixed(mineral) <= (limits[mineral]?.high ?? 1e9) &&
          mixed(mineral) >= ((limits[mineral] as { low?: number })?.low ?? 0),
      )
      if (!fits) return
      expect(blend.outcome).toBe('blend')
      if (blend.outcome === 'blend') expect(blend.costPerLitre).toBeLessThanOrEqual(mixed('cost') + 1e-6)
    }),
  )
})
