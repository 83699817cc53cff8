/** Points of a product chart or a dip table, rising in both numbers. */
export type Points = readonly (readonly [number, number])[]

/** The first number where the second is `second`: straight between points, and on beyond the last. */
export const firstAt = (points: Points, second: number): number => along(points, second, 1, 0)

/** The second number where the first is `first`. */
export const secondAt = (points: Points, first: number): number => along(points, first, 0, 1)

function along(points: Points, x: number, from: 0 | 1, to: 0 | 1): number {
  const above = points.findIndex((point) => point[from] >= x)
  const i = above === -1 ? points.length - 1 : Math.max(1, above)
  const [low, high] = [points[i - 1]!, points[i]!]
  return low[to] + ((high[to] - low[to]) * (x - low[from])) / (high[from] - low[from])
}
