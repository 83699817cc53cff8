const firstMs = 5_000
const longestMs = 5 * 60_000

/**
 * How long to wait after so many goes in vain: 5 s, 10 s, 20 s … at most 5 min, spread by a quarter either way so that the phones of a
 * shop do not come all at once when the server is back.
 *
 * @param tries from 1
 * @param chance from 0 to 1
 */
export function waitAfter(tries: number, chance: number): number {
  const plain = Math.min(longestMs, firstMs * 2 ** (tries - 1))
  return plain * (0.75 + 0.5 * chance)
}
