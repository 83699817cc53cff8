import type { RoundSight } from '../entries/round.ts'
import type { Surprising } from '../entries/sights.ts'
import type { Sight } from '../observe.ts'

/** Of a hundred readings these are misread, and these another sump's (common practice, no source). */
const misreadPrior = { brix: 0.013, other: 0.008 } as const
const exchangedPrior = 0.006

/**
 * How likely a figure is, to a constant, if it is not this sump's: misread, or read at a neighbour of the same round.
 */
export function notThisSumps(
  most: Surprising,
  sump: string,
  round: readonly RoundSight[],
): { misread: number; exchanged: number } {
  if (most.quantity !== 'brix') return { misread: misreadPrior.other * misreadOther(most), exchanged: 0 }
  let other = 0
  for (const neighbour of round) {
    if (neighbour.sump !== sump) other += normal(most.sight.read, neighbour.expected, neighbour.sd) / round.length
  }
  return { misread: misreadPrior.brix * misreadBrix(most.sight, most.sd), exchanged: exchangedPrior * other }
}

const normal = (x: number, mean: number, sd: number) =>
  Math.exp(-0.5 * ((x - mean) / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI))

/** How figures are misread: the point slips, a mark or two are miscounted, or anything (common practice, no source). */
function misreadBrix({ read, expected }: Sight, sd: number): number {
  const near = Math.max(expected, 0.1)
  let sum = 0.3 * normal(read, near, 2.5)
  sum += 0.15 * normal(read, 10 * near, 10 * sd) + 0.15 * normal(read, near / 10, sd / 10 + 0.03)
  for (const lines of [1, 2, 5]) {
    sum += 0.05 * (normal(read, near + lines, sd) + normal(read, near - lines, sd))
  }
  return sum + 0.1 / 40
}

function misreadOther({ quantity, sight }: Surprising): number {
  const reach = quantity === 'seen' ? 0.3 : 3
  return 0.9 * normal(sight.read, sight.expected, reach) + 0.1 / (quantity === 'seen' ? 2 : 30)
}
