/** How often intervals held what came, and how often honest ones would have. */
export interface Coverage {
  hits: number
  count: number
  share: number
  /** Shares between which honest 90 % intervals stay in 95 of 100 such tests, if the cases were independent. */
  honest: { low: number; high: number }
}

export interface Interval {
  low90: number
  high90: number
}

export function coverageOf(cases: readonly { interval: Interval; came: number }[], level = 0.9): Coverage {
  const hits = cases.filter(({ interval, came }) => came >= interval.low90 && came <= interval.high90).length
  const count = cases.length
  const { low, high } = binomialBand(count, level)
  return { hits, count, share: hits / count, honest: { low: low / count, high: high / count } }
}

/**
 * The central 95 % of a binomial distribution, exact: the smallest counts whose cumulated probability reaches 2.5 % and
 * 97.5 %. The probabilities are summed from their logarithms.
 */
export function binomialBand(count: number, share: number, level = 0.95): { low: number; high: number } {
  const tail = (1 - level) / 2
  let logarithm = count * Math.log(1 - share)
  let cumulated = 0
  let low = -1
  for (let hits = 0; hits <= count; hits++) {
    cumulated += Math.exp(logarithm)
    if (low === -1 && cumulated >= tail) low = hits
    if (cumulated >= 1 - tail) return { low, high: hits }
    logarithm += Math.log((count - hits) / (hits + 1)) + Math.log(share / (1 - share))
  }
  return { low: Math.max(low, 0), high: count }
}
