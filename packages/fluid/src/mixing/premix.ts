import type { Litres, Percent } from '../quantities.ts'
import { OutOfRange, requireRange } from '../require.ts'

/** What one sump on the cart's way wants. */
export interface PremixNeed {
  sump: string
  /** To be poured, above 0. */
  volume: Litres
  /** That would be poured if each sump had its own, 0 to 100. */
  strength: Percent
  /** In the sump after the fill, at least `volume`. */
  sumpVolume: Litres
}

/** What is mixed for the cart, and what it does to each sump. */
export interface Premix {
  /** From the weakest to the strongest; never more than there are different strengths wanted. */
  batches: { strength: Percent; volume: Litres; sumps: string[] }[]
  /** By how much each sump misses its target, in the order given: above 0 is too strong. */
  errors: { sump: string; error: Percent }[]
  /** The largest miss, either way. */
  worst: Percent
}

/**
 * The k strengths for one cart that serve all sumps best: the ones with the least sum of squared errors of the sumps' concentrations.
 *
 *     error = (strength poured − strength wanted) · volume / sumpVolume
 *
 * A large pour into a small sump counts most. That is a grouping of points on a line with weights (volume / sumpVolume)², and the best groups are
 * stretches of the points in order, so that dynamic programming finds the best of all groupings, not a good one: the best k groups of the first i
 * points end with one more group after the best k − 1 groups of the first j. Where that last group begins never moves back as i grows, which halves
 * the search again and again: n log n steps a group.
 *
 * Among equally good groupings the one whose last groups begin earliest is taken.
 *
 * Source: H. Wang, M. Song, "Ckmeans.1d.dp", The R Journal 3/2 (2011) 29–33.
 *
 * @throws {RangeError} a quantity outside the range its field gives, no need, fewer strengths than 1 or not a whole number
 * @example premix([{ sump: 'a', volume: 20, strength: 4, sumpVolume: 100 }, { sump: 'b', volume: 20, strength: 6, sumpVolume: 100 }], 1).batches // one of 40 L at 5 %
 */
export function premix(needs: readonly PremixNeed[], strengths: number): Premix {
  requireNeeds(needs, strengths)
  const points = pointsOf(needs)
  const groups = bestGroups(points, Math.min(strengths, points.length))
  const batchOf = new Map<number, number>()
  for (const [batch, { from, to }] of groups.entries()) {
    for (let index = from; index <= to; index += 1) batchOf.set(points[index]!.strength, batch)
  }
  const batches = groups.map(({ strength }, batch) => {
    const served = needs.filter((need) => batchOf.get(need.strength) === batch)
    return {
      strength,
      volume: served.reduce((sum, { volume }) => sum + volume, 0),
      sumps: served.map(({ sump }) => sump),
    }
  })
  const errors = needs.map(({ sump, volume, strength, sumpVolume }) => ({
    sump,
    error: ((batches[batchOf.get(strength)!]!.strength - strength) * volume) / sumpVolume,
  }))
  return { batches, errors, worst: Math.max(...errors.map(({ error }) => Math.abs(error))) }
}

/** A strength that is wanted, and how much it counts. */
interface Point {
  strength: Percent
  weight: number
}

/** Different strengths in order; needs of one strength are one point. */
function pointsOf(needs: readonly PremixNeed[]): Point[] {
  const weights = new Map<number, number>()
  for (const { strength, volume, sumpVolume } of needs) {
    weights.set(strength, (weights.get(strength) ?? 0) + (volume / sumpVolume) ** 2)
  }
  return [...weights].map(([strength, weight]) => ({ strength, weight })).sort((a, b) => a.strength - b.strength)
}

/** A stretch of points, both ends included, and the strength that serves it best. */
interface Group {
  from: number
  to: number
  strength: Percent
}

function bestGroups(points: readonly Point[], k: number): Group[] {
  const within = squaresWithin(points)
  const n = points.length
  /** Least squares of the first i + 1 points in so many groups, and where the last of those groups begins. */
  let least = Float64Array.from(points, (_, i) => within(0, i))
  const begins: Int32Array[] = [new Int32Array(n)]
  for (let groups = 2; groups <= k; groups += 1) {
    const next = new Float64Array(n).fill(Number.POSITIVE_INFINITY)
    const begin = new Int32Array(n)
    const fill = (low: number, high: number, first: number, last: number): void => {
      if (low > high) return
      const middle = (low + high) >> 1
      for (let j = Math.max(first, groups - 1); j <= Math.min(last, middle); j += 1) {
        const squares = least[j - 1]! + within(j, middle)
        if (squares < next[middle]!) {
          next[middle] = squares
          begin[middle] = j
        }
      }
      fill(low, middle - 1, first, begin[middle]!)
      fill(middle + 1, high, begin[middle]!, last)
    }
    fill(groups - 1, n - 1, groups - 1, n - 1)
    begins.push(begin)
    least = next
  }
  const found: Group[] = []
  for (let groups = k, to = n - 1; groups >= 1; groups -= 1) {
    const from = begins[groups - 1]![to]!
    found.unshift({ from, to, strength: meanOf(points.slice(from, to + 1)) })
    to = from - 1
  }
  return found
}

/** The weighted mean, summed afresh: running sums would lose what counts little beside what counts much. */
function meanOf(points: readonly Point[]): Percent {
  const total = points.reduce((sum, { weight }) => sum + weight, 0)
  return points.reduce((sum, { strength, weight }) => sum + strength * (weight / total), 0)
}

/** Squares of a stretch of points about its mean, from running sums; they are taken about the overall mean, which keeps their digits. */
function squaresWithin(points: readonly Point[]): (from: number, to: number) => number {
  const centre = meanOf(points)
  const [weights, firsts, seconds] = [0, 1, 2].map((power) => {
    const sums = new Float64Array(points.length + 1)
    for (const [i, { strength, weight }] of points.entries())
      sums[i + 1] = sums[i]! + weight * (strength - centre) ** power
    return sums
  }) as [Float64Array, Float64Array, Float64Array]
  return (from, to) => {
    if (from === to) return 0
    const weight = weights[to + 1]! - weights[from]!
    const first = firsts[to + 1]! - firsts[from]!
    if (!(weight > 0)) return 0
    return Math.max(0, seconds[to + 1]! - seconds[from]! - first ** 2 / weight)
  }
}

function requireNeeds(needs: readonly PremixNeed[], strengths: number): void {
  requireRange('needs', needs.length, { min: 1 })
  for (const [index, { volume, strength, sumpVolume }] of needs.entries()) {
    requireRange(`needs.${index}.volume`, volume, { above: 0 })
    requireRange(`needs.${index}.strength`, strength, { min: 0, max: 100 })
    requireRange(`needs.${index}.sumpVolume`, sumpVolume, { min: volume })
  }
  requireRange('strengths', strengths, { min: 1, max: 1000 })
  if (!Number.isInteger(strengths)) throw new OutOfRange('strengths', strengths, 'a whole number')
}
