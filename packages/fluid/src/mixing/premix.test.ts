import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type PremixNeed, premix } from './premix.ts'

const need = (sump: string, strength: number, volume = 20, sumpVolume = 100): PremixNeed => ({
  sump,
  strength,
  volume,
  sumpVolume,
})

test('one strength is the mean of what is wanted', () => {
  expect(premix([need('a', 4), need('b', 6)], 1)).toEqual({
    batches: [{ strength: 5, volume: 40, sumps: ['a', 'b'] }],
    // (5 − 4) × 20 / 100
    errors: [
      { sump: 'a', error: 0.2 },
      { sump: 'b', error: -0.2 },
    ],
    worst: 0.2,
  })
})

test('a large pour into a small sump counts most', () => {
  // weights (20/100)² = 0.04 and (40/100)² = 0.16: (4 × 0.04 + 9 × 0.16) / 0.2 = 8
  const { batches, errors } = premix([need('a', 4), need('b', 9, 40)], 1)
  expect(batches[0]!.strength).toBeCloseTo(8, 12)
  expect(errors.map(({ error }) => error)).toEqual([expect.closeTo(0.8, 12), expect.closeTo(-0.4, 12)])
})

test('two strengths part the sumps where that helps most', () => {
  const { batches, worst } = premix([need('a', 9), need('b', 3), need('c', 8), need('d', 2)], 2)
  expect(batches).toEqual([
    { strength: 2.5, volume: 40, sumps: ['b', 'd'] },
    { strength: 8.5, volume: 40, sumps: ['a', 'c'] },
  ])
  expect(worst).toBeCloseTo(0.1, 12)
})

test('as many strengths as are wanted serve every sump exactly', () => {
  const { batches, worst } = premix([need('a', 7), need('b', 3), need('c', 7)], 5)
  expect(batches.map(({ strength, sumps }) => [strength, sumps])).toEqual([
    [3, ['b']],
    [7, ['a', 'c']],
  ])
  expect(worst).toBe(0)
})

test('sumps that want the same always get the same', () => {
  const { batches } = premix([need('a', 5), need('b', 5), need('c', 5), need('d', 9)], 2)
  expect(batches.map(({ sumps }) => sumps)).toEqual([['a', 'b', 'c'], ['d']])
})

test('of equally good groupings the one whose last group begins earliest is taken', () => {
  // 2 with 4 and 6 alone are as good as 2 alone and 4 with 6.
  const { batches } = premix([need('a', 2), need('b', 4), need('c', 6)], 2)
  expect(batches.map(({ strength }) => strength)).toEqual([2, expect.closeTo(5, 12)])
})

test.each<[string, PremixNeed[], number]>([
  ['needs is 0, expected at least 1', [], 1],
  ['strengths is 0, expected at least 1', [need('a', 5)], 0],
  ['strengths is 1.5, expected a whole number', [need('a', 5)], 1.5],
  ['needs.0.volume is 0, expected above 0', [need('a', 5, 0)], 1],
  ['needs.1.strength is 101', [need('a', 5), need('b', 101)], 1],
  ['needs.0.sumpVolume is 10, expected at least 20', [need('a', 5, 20, 10)], 1],
  ['needs.0.strength is NaN', [need('a', Number.NaN)], 1],
])('%s is refused', (message, needs, strengths) => {
  expect(() => premix(needs, strengths)).toThrow(message)
})

const anyNeeds = fc.array(
  fc.record({
    sump: fc.string(),
    strength: fc.integer({ min: 0, max: 200 }).map((tenths) => tenths / 10),
    volume: fc.double({ min: 1, max: 50, noNaN: true }),
    sumpVolume: fc.double({ min: 50, max: 500, noNaN: true }),
  }),
  { minLength: 1, maxLength: 8 },
)
const squaresOf = (errors: { error: number }[]) => errors.reduce((sum, { error }) => sum + error ** 2, 0)

/** The least sum of squares over every way to part the needs in order into so many stretches, one by one. */
function leastByTrial(needs: readonly PremixNeed[], groups: number): number {
  const sorted = [...needs].sort((a, b) => a.strength - b.strength)
  const cost = (stretch: readonly PremixNeed[]) => {
    const weights = stretch.map(({ volume, sumpVolume }) => (volume / sumpVolume) ** 2)
    const total = weights.reduce((sum, weight) => sum + weight, 0)
    const mean = stretch.reduce((sum, { strength }, i) => sum + (strength * weights[i]!) / total, 0)
    return stretch.reduce((sum, { strength }, i) => sum + weights[i]! * (strength - mean) ** 2, 0)
  }
  const least = (from: number, left: number): number => {
    if (left === 1) return cost(sorted.slice(from))
    let best = Number.POSITIVE_INFINITY
    for (let to = from + 1; to <= sorted.length - left + 1; to += 1) {
      best = Math.min(best, cost(sorted.slice(from, to)) + least(to, left - 1))
    }
    return best
  }
  return least(0, Math.min(groups, sorted.length))
}

test('no grouping is better: every other was tried', () => {
  fc.assert(
    fc.property(anyNeeds, fc.integer({ min: 1, max: 5 }), (needs, strengths) => {
      const { errors } = premix(needs, strengths)
      expect(squaresOf(errors)).toBeCloseTo(leastByTrial(needs, strengths), 9)
    }),
  )
})

test('every sump is served once, by amounts and strengths that add up', () => {
  fc.assert(
    fc.property(anyNeeds, fc.integer({ min: 1, max: 5 }), (needs, strengths) => {
      const { batches, errors, worst } = premix(needs, strengths)
      expect(batches.length).toBeLessThanOrEqual(strengths)
      expect(batches.flatMap(({ sumps }) => sumps).sort()).toEqual(needs.map(({ sump }) => sump).sort())
      expect(errors.map(({ sump }) => sump)).toEqual(needs.map(({ sump }) => sump))
      const [poured, wanted] = [batches, needs].map((all) => all.reduce((sum, { volume }) => sum + volume, 0))
      expect(poured).toBeCloseTo(wanted!, 9)
      expect(worst).toBe(Math.max(...errors.map(({ error }) => Math.abs(error))))
      for (const { strength } of batches) {
        expect(strength).toBeGreaterThanOrEqual(0)
        expect(strength).toBeLessThanOrEqual(20)
      }
    }),
  )
})

test('one strength more never serves worse', () => {
  fc.assert(
    fc.property(anyNeeds, fc.integer({ min: 1, max: 5 }), (needs, strengths) => {
      const [few, more] = [premix(needs, strengths), premix(needs, strengths + 1)]
      expect(squaresOf(more.errors)).toBeLessThanOrEqual(squaresOf(few.errors) + 1e-12)
    }),
  )
})
