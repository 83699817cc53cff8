import { OutOfRange, requireRange } from '../require.ts'

/** What something costs to replace, and to keep from period to period. */
export interface PeriodCosts {
  /** Less what the old one still brings. */
  changeCost: number
  /** Of the first, second, … period. */
  running: readonly number[]
}

export interface ReplacementPeriod {
  /** Replace at the end of this period, counted from 1. */
  period: number
  /** A period, on average over that life. */
  average: number
  /** The average of every life of the list. */
  averages: number[]
  /** Whether the average still falls at the end of the list: the best life may be longer than the list. */
  stillFalling: boolean
}

/**
 * The life, in whole periods, whose average cost is least; the first of equal ones:
 *
 *     averages[n] = (changeCost + running[1] + … + running[n]) / n
 *
 * The average falls as long as the next period costs less than the average so far.
 *
 * Source: replacement without discounting, any textbook of operations research.
 *
 * @throws {RangeError} a cost that is no number, no period at all
 * @example replacementPeriod({ changeCost: 12000, running: [200, 500, 800, 1200, 1800, 2500, 3200, 4000] }) // period 6, average 3166.67
 */
export function replacementPeriod({ changeCost, running }: PeriodCosts): ReplacementPeriod {
  requireRange('changeCost', changeCost, { min: 0 })
  if (running.length === 0) throw new OutOfRange('running', 0, 'the cost of at least one period')
  let sum = changeCost
  const averages = running.map((cost, index) => {
    requireRange(`running.${index}`, cost, { min: 0 })
    sum += cost
    return sum / (index + 1)
  })
  const average = Math.min(...averages)
  const period = averages.indexOf(average) + 1
  return { period, average, averages, stillFalling: period === running.length && running.length > 1 }
}
