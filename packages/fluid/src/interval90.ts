import type { Sd } from './quantities.ts'

/** The 95 % quantile of the standard normal distribution: a central 90 % interval is mean ± this × sd. */
export const quantile95 = 1.6448536269514722

/**
 * The central 90 % interval of a normal quantity that cannot lie below `floor`.
 *
 * @example interval90(8, 0.1, 0) // { low90: 7.8355…, high90: 8.1644… }
 */
export function interval90(mean: number, sd: Sd, floor: number): { low90: number; high90: number } {
  return {
    low90: Math.max(floor, mean - quantile95 * sd),
    high90: Math.max(floor, mean + quantile95 * sd),
  }
}
