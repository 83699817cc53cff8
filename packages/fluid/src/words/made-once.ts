/**
 * Keeps what is made of two keys and of nothing else, so that it can never be out of date: formats by language and text, days by zone and
 * instant. Once there are `most` of them all are forgotten, so that whoever asks in thousands of ways fills no memory.
 *
 * @example
 * const days = madeOnce<string, number, string>(1000)
 * days('de', 20000, () => 'Mittwoch') // 'Mittwoch', and the next time without making it
 */
export function madeOnce<A, B, Made extends NonNullable<unknown>>(
  most: number,
): (a: A, b: B, make: () => Made) => Made {
  const kept = new Map<A, Map<B, Made>>()
  let count = 0
  return (a, b, make) => {
    const known = kept.get(a)?.get(b)
    if (known !== undefined) return known
    const made = make()
    if (count >= most) {
      kept.clear()
      count = 0
    }
    count++
    let ofA = kept.get(a)
    if (ofA === undefined) {
      ofA = new Map()
      kept.set(a, ofA)
    }
    ofA.set(b, made)
    return made
  }
}
