import type { ShopRun } from '../simulate/shop-run.ts'

/** Days before the last on which the one of the early shift was away. */
const away = { from: 100, to: 87 }

/** People by what they are in the shop, as they would write themselves down where nobody has an account. */
export const early = 'Early shift'
export const late = 'Late shift'
/** The one who looks after the fluids, by day. */
export const keeper = 'Fluid keeper'

/** Who is there at an hour: the early shift, the late one, the keeper where the early one is away. */
export function onDuty({ last }: ShopRun, day: number, hours: number): string {
  if (hours >= 14) return late
  return isAway(last - day) ? keeper : early
}

/** The one who knows the round is away, and more of it is missed. */
export const isAway = (daysLeft: number): boolean => daysLeft <= away.from && daysLeft >= away.to
