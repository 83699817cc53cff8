/** The limits of the band, in percent. */
export interface Band {
  low: number
  high: number
}

/** How far ahead a crossing is looked for, in days. */
export const crossingHorizon = 28

/**
 * The first day, with its fraction, on which a daily course leaves the band; straight between its days. Null where it
 * stays inside to its end, or is outside from the beginning and so crosses nothing.
 */
export function firstCrossing(course: readonly number[], { low, high }: Band): number | null {
  const inside = (value: number) => value >= low && value <= high
  if (course.length === 0 || !inside(course[0]!)) return null
  const day = course.findIndex((value) => !inside(value))
  if (day === -1) return null
  const [before, after] = [course[day - 1]!, course[day]!]
  const limit = after > high ? high : low
  return day - 1 + (limit - before) / (after - before)
}

/** Days by which a crossing was called late (or early, negative); one not called counts as called at the horizon. */
export function crossingError(called: number | null, came: number, horizon = crossingHorizon): number {
  return Math.min(called ?? horizon, horizon) - came
}
