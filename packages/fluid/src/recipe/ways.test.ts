import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { SumpToPour } from './recipe.ts'
import { type OnHand, pourWays, type Way } from './ways.ts'

const sump: SumpToPour = { volume: 150, concentration: 6.5, fillVolume: 200, target: 6, band: { low: 5, high: 7 } }
const short = ({ parts }: Way) => parts.map(({ kind, volume, strength }) => [kind, volume, strength])

// The fill wants 50 L at 4.5 %. Premix of 5 % lands at (975 + 250) / 200 = 6.125 %, within 0.2 of the target: one liquid.
test('one premix that nearly meets the target comes before two liquids that meet it', () => {
  const [best, second] = pourWays(sump, { premixes: [{ id: 'cart', strength: 5, volume: 100 }] })
  expect(short(best!)).toEqual([['premix', 50, 5]])
  expect(best!.result.concentration).toBeCloseTo(6.125, 10)
  // 4.5 of 0 and 5 %: a tenth water.
  expect(short(second!)).toEqual([
    ['water', expect.closeTo(5, 10), 0],
    ['premix', expect.closeTo(45, 10), 5],
  ])
  expect(second!.offTarget).toBeCloseTo(0, 10)
})

test('a premix of which there is too little is only a part', () => {
  const ways = pourWays(sump, { premixes: [{ id: 'cart', strength: 9, volume: 30 }] })
  expect(ways.map(short)).toEqual([
    [
      ['water', expect.closeTo(25, 10), 0],
      ['premix', expect.closeTo(25, 10), 9],
    ],
    [['water', 50, 0]],
  ])
})

test('the nearest settings of the mixer are tried alone and together', () => {
  const [best] = pourWays(sump, { mixerStrengths: [2, 4, 8] })
  // 50 L at 4 % land at 5.875 %.
  expect(short(best!)).toEqual([['mixer', 50, 4]])
})

test('a mix in buckets meets the target, with more fuss', () => {
  const ways = pourWays(sump, { buckets: true })
  expect(short(ways[0]!)).toEqual([['bucket-mix', 50, 4.5]])
  expect(ways[0]!.offTarget).toBeCloseTo(0, 10)
})

test('what is too strong or too lean for the fluid is not poured', () => {
  const ways = pourWays(sump, {
    premixes: [{ id: 'p', strength: 25, volume: 100 }],
    strongest: 20,
    leanest: 2,
    mixerStrengths: [1, 3],
  })
  expect(ways.map(short)).toEqual([[['mixer', 50, 3]]])
})

test('with softened water alone no plain water is poured', () => {
  expect(pourWays(sump, { waters: [{ id: 'soft', kind: 'softened' }] })).toEqual([])
})

test('water is poured where one of the waters is not softened', () => {
  const ways = pourWays(sump, {
    waters: [
      { id: 'soft', kind: 'softened' },
      { id: 'tap', kind: 'tap' },
    ],
  })
  expect(ways.map(short)).toEqual([[['water', 50, 0]]])
})

test('while the pumps run, what is out in the lines counts', () => {
  const running = { ...sump, volume: 130, holdUp: 20, pumps: 'running' as const }
  expect(short(pourWays(running, {})[0]!)).toEqual([['water', 50, 0]])
  expect(short(pourWays({ ...running, pumps: 'stopped' as const }, {})[0]!)).toEqual([['water', 70, 0]])
})

test('a premix that is just enough is enough', () => {
  const ways = pourWays(sump, { premixes: [{ id: 'p', strength: 4.5, volume: 50 }], leanest: 1 })
  expect(ways.map(short)).toEqual([[['premix', 50, 4.5]]])
})

test('two liquids of one strength are no way together', () => {
  expect(pourWays(sump, { mixerStrengths: [3, 3], leanest: 1 }).map(({ parts }) => parts.length)).toEqual([1, 1])
})

test('a mix in buckets is no way where the fill wants more than the strongest or less than the leanest', () => {
  const kinds = (onHand: OnHand) => pourWays(sump, { buckets: true, ...onHand }).map(({ parts }) => parts[0]!.kind)
  expect(kinds({ strongest: 4.5 })).toEqual(['bucket-mix', 'water'])
  expect(kinds({ strongest: 4.4 })).toEqual(['water'])
  expect(kinds({ leanest: 4.5 })).toEqual([])
  expect(kinds({ leanest: 4.4 })).toEqual(['bucket-mix'])
})

test('of two ways that meet the target, the one with fewer liquids comes first; then the nearer', () => {
  const ways = pourWays(sump, { mixerStrengths: [4.5, 4.6], buckets: true, leanest: 1 })
  expect(ways.map(({ parts, fuss }) => [fuss, ...parts.map(({ strength }) => strength)])).toEqual([
    [1, 4.5],
    [1, 4.6],
    [2, 4.5],
  ])
})

test('without a band every way is inside it', () => {
  const { band: _, ...unbounded } = sump
  expect(pourWays({ ...unbounded, concentration: 0.1 }, {})).toMatchObject([{ inBand: true }])
})

test('the edges of the band are inside it', () => {
  // 50 L of water into 150 L at 20/3 % and 28/3 %: 5 % and 7 %.
  expect(pourWays({ ...sump, concentration: 20 / 3 }, {})).toMatchObject([{ inBand: true }])
  expect(pourWays({ ...sump, concentration: 28 / 3 }, {})).toMatchObject([{ inBand: true }])
  expect(pourWays({ ...sump, concentration: 6.6 }, {})).toMatchObject([{ inBand: false }])
  expect(pourWays({ ...sump, concentration: 9.4 }, {})).toMatchObject([{ inBand: false }])
})

test.each([
  ['volume', { volume: -1 }],
  ['volume', { volume: 263 }],
  ['concentration', { concentration: 101 }],
  ['fillVolume', { fillVolume: 0 }],
  ['target', { target: -1 }],
])('%s out of its range is refused by name', (name, more) => {
  expect(() => pourWays({ ...sump, ...more }, {})).toThrow(new RegExp(`^${name}\\b`))
})

test('at the mark nothing is poured', () => {
  expect(pourWays({ ...sump, volume: 200 }, { buckets: true })).toEqual([])
})

test('ways in the band come before all others', () => {
  // 100 L at 4 % to 200 L at 6 %: water alone lands at 2 %.
  const ways = pourWays(
    { ...sump, volume: 100, concentration: 4 },
    { premixes: [{ id: 'p', strength: 10, volume: 500 }] },
  )
  expect(ways[0]!.inBand).toBe(true)
  expect(ways.at(-1)).toMatchObject({ inBand: false })
})

test('every way fills to the mark, conserves concentrate and lies between sump and pour', () => {
  const liquids = fc.array(fc.double({ min: 0, max: 20, noNaN: true }), { maxLength: 4 })
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 199.999, noNaN: true }),
      fc.double({ min: 0, max: 20, noNaN: true }),
      liquids,
      liquids,
      (volume, concentration, mixer, premix) => {
        const premixes = premix.map((strength, i) => ({ id: String(i), strength, volume: 40 * (i + 1) }))
        for (const { parts, result } of pourWays(
          { ...sump, volume, concentration },
          { mixerStrengths: mixer, premixes, buckets: true },
        )) {
          const poured = parts.reduce((sum, part) => sum + part.volume, 0)
          expect(volume + poured).toBeCloseTo(200, 8)
          const concentrate = volume * concentration + parts.reduce((sum, part) => sum + part.volume * part.strength, 0)
          expect(Math.abs(result.concentration * result.volume - concentrate)).toBeLessThanOrEqual(
            1e-9 * Math.max(1, concentrate),
          )
          const strengths = [concentration, ...parts.map(({ strength }) => strength)]
          expect(result.concentration).toBeGreaterThanOrEqual(Math.min(...strengths) - 1e-9)
          expect(result.concentration).toBeLessThanOrEqual(Math.max(...strengths) + 1e-9)
          for (const { id, volume: litres } of parts) {
            const there = premixes.find((one) => one.id === id)
            if (there !== undefined) expect(litres).toBeLessThanOrEqual(there.volume)
          }
        }
      },
    ),
    { numRuns: 10_000 },
  )
})
