import type { ShopRun } from '../simulate/shop-run.ts'

/** Days before the last on which the one of the early shift was away. */
const away = { from: 100, to: 87 }

/** Who is there at an hour: p1 early, p2 late, p3 where p1 is away. */
export function onDuty({ last }: ShopRun, day: number, hours: number): string {
  if (hours >= 14) return 'p2'
  return isAway(last - day) ? 'p3' : 'p1'
}

/** The one who knows the round is away, and more of it is missed. */
export const isAway = (daysLeft: number): boolean => daysLeft <= away.from && daysLeft >= away.to
