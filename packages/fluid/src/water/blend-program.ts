import { bestShares, type LimitRow } from './shares-program.ts'

/** A sum of values · shares that is to come as near as can be; near 0 it is as low as can be. */
export interface Goal {
  /** 0 or more. */
  values: readonly number[]
  near: number
}

/** The shares of least cost inside all limits, or null where no shares keep the limits. */
export const cheapestShares = (rows: readonly LimitRow[], costs: readonly number[]): number[] | null =>
  bestShares({ count: costs.length, rows, goal: { values: costs, direction: 'minimize' } })

/** What the fuss is judged by. */
export interface Fuss {
  rows: readonly LimitRow[]
  costs: readonly number[]
  /** Shares of least cost, as {@link cheapestShares} gives them. */
  cheapest: readonly number[]
  /** Null where the hardness does not count. */
  hardness: Goal | null
}

/** The shares of least fuss that cost no more than the cheapest: fewest waters, then the hardness nearest what is wanted, then the waters named first. */
export function leastFuss({ rows, costs, cheapest, hardness }: Fuss): number[] {
  const count = cheapest.length
  const goal = hardness ?? { values: cheapest.map(() => 0), near: 0 }
  const all = [...rows, asCheapAs(cheapest, costs)]
  const usable = usableIn(all, count)
  for (let few = 1; few <= usable.length; few += 1) {
    let best: { shares: number[]; chosen: number[] } | null = null
    for (const places of choices(usable.length, few)) {
      const chosen = places.map((place) => usable[place]!)
      const shares = nearest(all, goal, chosen)
      const better = shares !== null && (best === null || missOf(shares, goal) < missOf(best.shares, goal) - hair(goal))
      if (better) best = { shares, chosen }
    }
    if (best === null) continue
    // The hair's breadth of cost that rounding was given is taken back, unless the goal makes use of a tie.
    const exact = bestShares({ count, rows, goal: { values: costs, direction: 'minimize' }, chosen: best.chosen })
    return exact !== null && missOf(exact, goal) <= missOf(best.shares, goal) + hair(goal) ? exact : best.shares
  }
  return [...cheapest]
}

/** The waters that have a share in any shares inside these limits: mostly few, so that few ways of choosing are left to try. */
function usableIn(rows: readonly LimitRow[], count: number): number[] {
  return Array.from({ length: count }, (_, index) => index).filter((index) => {
    const values = Array.from({ length: count }, (_, other) => (other === index ? 1 : 0))
    const most = bestShares({ count, rows, goal: { values, direction: 'maximize' } })
    return most !== null && most[index]! > 1e-7
  })
}

/** A smallest set of limits that cannot all hold, each with the nearest that can be reached while the others hold. */
export function conflictOf<Row extends LimitRow>(rows: readonly Row[]): { row: Row; reach: number }[] {
  const count = rows[0]!.values.length
  let left = [...rows]
  for (const row of rows) {
    const without = left.filter((other) => other !== row)
    if (bestShares({ count, rows: without, goal: null }) === null) left = without
  }
  return left.map((row) => {
    const others = left.filter((other) => other !== row)
    const direction = row.end === 'high' ? 'minimize' : 'maximize'
    return {
      row,
      reach: sumOf(bestShares({ count, rows: others, goal: { values: row.values, direction } })!, row.values),
    }
  })
}

/** Shares of the chosen waters inside all limits that come nearest to the goal: from above, or else from below. */
function nearest(rows: readonly LimitRow[], { values, near }: Goal, chosen: readonly number[]): number[] | null {
  const common = { count: values.length, chosen }
  const fromAbove = near === 0 ? rows : [...rows, { end: 'low', limit: near, values } as const]
  const above = bestShares({ ...common, rows: fromAbove, goal: { values, direction: 'minimize' } })
  if (near === 0 || (above !== null && missOf(above, { values, near }) <= hair({ values, near }))) return above
  const fromBelow = [...rows, { end: 'high', limit: near, values } as const]
  const below = bestShares({ ...common, rows: fromBelow, goal: { values, direction: 'maximize' } })
  if (above === null || below === null) return above ?? below
  return missOf(above, { values, near }) <= missOf(below, { values, near }) ? above : below
}

const sumOf = (shares: readonly number[], values: readonly number[]) =>
  shares.reduce((sum, share, index) => sum + share * values[index]!, 0)

const missOf = (shares: readonly number[], { values, near }: Goal) => Math.abs(sumOf(shares, values) - near)

/** What does not count as a difference. */
const hair = ({ values, near }: Goal) => 1e-6 * Math.max(near, ...values)

/** A limit a billionth above what the cheapest shares cost, so that rounding does not shut them out. */
function asCheapAs(cheapest: readonly number[], costs: readonly number[]): LimitRow {
  return { end: 'high', limit: sumOf(cheapest, costs) + 1e-9 * Math.max(...costs), values: costs }
}

/** All ways to take `count` of the first `of` whole numbers, in order. */
function* choices(of: number, count: number, from = 0): Generator<number[]> {
  if (count === 0) {
    yield []
    return
  }
  for (let first = from; first <= of - count; first += 1) {
    for (const rest of choices(of, count - 1, first + 1)) yield [first, ...rest]
  }
}
