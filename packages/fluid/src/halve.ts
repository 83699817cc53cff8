/**
 * The place in [low, high] where `below` turns from true to false, halved down until no double lies between.
 *
 * @param below true up to some place and false from there on; at `high` it is taken to be false
 * @example halve(0, 2, (x) => x * x < 2) // 1.4142135623730951
 */
export function halve(low: number, high: number, below: (x: number) => boolean): number {
  if (!below(low)) return low
  let [from, to] = [low, high]
  while (true) {
    const middle = from + (to - from) / 2
    if (middle <= from || middle >= to) return to
    if (below(middle)) from = middle
    else to = middle
  }
}
