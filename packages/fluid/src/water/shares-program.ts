import { type Coefficients, type Constraint, type Solution, solve } from 'yalps'

/** A limit on Σ values · shares. */
export interface LimitRow {
  end: 'low' | 'high'
  /** 0 or more. */
  limit: number
  /** Of each water, 0 or more. */
  values: readonly number[]
}

/** Shares of a whole, inside limits, that make a sum least or most. */
export interface SharesProgram {
  /** How many there are to share. */
  count: number
  rows: readonly LimitRow[]
  /** Of Σ values · shares. Without one, any shares inside the limits do. */
  goal: { values: readonly number[]; direction: 'minimize' | 'maximize' } | null
  /** Which of them may have a share; all unless given. */
  chosen?: readonly number[] | undefined
}

/**
 * The best shares, adding up to 1, or null where no shares keep the limits.
 *
 * Shares that are equally good are told apart by a billionth for each place in the list: the first named wins. That also keeps the solver
 * from going round in circles, which it can where many answers are equal; where it still does, it is asked again with limits eased by parts in a
 * billion, each by another.
 */
export function bestShares(program: SharesProgram): number[] | null {
  for (const ease of [0, 1e-9, 3e-9, 1e-8]) {
    const { status, variables } = solved(program, ease)
    if (status === 'infeasible') return null
    if (status === 'optimal') return sharesFrom(variables, program.count)
  }
  throw new Error('the solver of linear programs came to no end')
}

function solved({ count, rows, goal, chosen }: SharesProgram, ease: number): Solution {
  const indices = chosen ?? Array.from({ length: count }, (_, index) => index)
  const constraints: [string, Constraint][] = [['whole', { equal: 1 }]]
  const entries = new Map<number, [string, number][]>(indices.map((index) => [index, [['whole', 1]]]))
  const enter = (name: string, values: readonly number[], scale: number) => {
    for (const index of indices) entries.get(index)!.push([name, values[index]! / scale])
  }
  for (const [place, { end, limit, values }] of rows.entries()) {
    // Each row is brought to the size of 1, where the solver's own tolerance is meant to work.
    const scale = Math.max(limit, ...values) || 1
    const eased = ease * (1 + place / 7)
    constraints.push([`row ${place}`, end === 'low' ? { min: limit / scale - eased } : { max: limit / scale + eased }])
    enter(`row ${place}`, values, scale)
  }
  enter('goal', goalOf(goal, count), 1)
  const variables = indices.map((index): [string, Coefficients] => [String(index), entries.get(index)!])
  // A finer tolerance takes rounding for limits: at 1e-11 the solver misses the optimum of a Netlib program of 74 rows.
  const program = { direction: 'minimize', objective: 'goal', constraints, variables } as const
  return solve(program, { precision: 1e-10, maxPivots: 500 })
}

/** What is to be least, 0 to 1 for each and never twice the same: since the shares add up to 1, a constant for all changes nothing. */
function goalOf(goal: SharesProgram['goal'], count: number): number[] {
  const values = goal?.values ?? Array.from({ length: count }, () => 0)
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const toLow = (value: number) => (goal?.direction === 'maximize' ? high - value : value - low)
  return values.map((value, index) => toLow(value) / (high - low || 1) + 1e-9 * (1 + index))
}

/** Without the solver's dust, adding up to 1. */
function sharesFrom(variables: Solution['variables'], count: number): number[] {
  const shares = Array.from({ length: count }, () => 0)
  for (const [name, share] of variables) if (share >= 1e-9) shares[Number(name)] = share
  const total = shares.reduce((sum, share) => sum + share, 0)
  return shares.map((share) => share / total)
}
