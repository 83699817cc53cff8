/** Chance for one part of the simulation. */
export interface Chance {
  /** From 0, below 1. */
  unit(): number
  between(low: number, high: number): number
  /** True with this probability. */
  happens(probability: number): boolean
  normal(sd: number): number
  /** About 1, with this standard deviation of the logarithm. */
  factor(sd: number): number
  /** Student's t with a whole number of degrees of freedom: heavy tails. */
  student(degrees: number): number
  exponential(mean: number): number
  pick<T>(list: readonly T[]): T
}

const size = 624
const middle = 397

/**
 * The Mersenne Twister MT19937: whole numbers of 32 random bits.
 *
 * Source: M. Matsumoto, T. Nishimura, ACM TOMACS 8 (1998); the same engine as C++'s `std::mt19937`.
 */
export function mersenneTwister(seed: number): () => number {
  const words = new Uint32Array(size)
  words[0] = seed
  for (let i = 1; i < size; i++) {
    const before = words[i - 1]! ^ (words[i - 1]! >>> 30)
    words[i] = Math.imul(1_812_433_253, before) + i
  }
  let place = size
  const twist = () => {
    for (let i = 0; i < size; i++) {
      const joined = (words[i]! & 0x80000000) | (words[(i + 1) % size]! & 0x7fffffff)
      words[i] = words[(i + middle) % size]! ^ (joined >>> 1) ^ (joined & 1 ? 0x9908b0df : 0)
    }
    place = 0
  }
  return () => {
    if (place >= size) twist()
    let bits = words[place++]!
    bits ^= bits >>> 11
    bits ^= (bits << 7) & 0x9d2c5680
    bits ^= (bits << 15) & 0xefc60000
    return (bits ^ (bits >>> 18)) >>> 0
  }
}

/** A stream of its own for each seed and place in the shop, so that one sump's luck never shifts another's. */
export function chanceOf(seed: number, ...place: number[]): Chance {
  const mixed = place.reduce(
    (sum, part) => Math.imul(sum ^ (part + 0x9e3779b9), 0x85ebca6b) >>> 0,
    // Neighbouring seeds must lie far apart, or seed 2 of shop 1 is seed 3 of shop 2.
    Math.imul(seed, 0xc2b2ae35) >>> 0,
  )
  const next = mersenneTwister(mixed)
  const unit = () => next() / 2 ** 32
  const normal = (sd: number) => sd * Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit())
  return {
    unit,
    between: (low, high) => low + (high - low) * unit(),
    happens: (probability) => unit() < probability,
    normal,
    factor: (sd) => Math.exp(normal(sd)),
    student: (degrees) => {
      let squares = 0
      for (let i = 0; i < degrees; i++) squares += normal(1) ** 2
      return normal(1) / Math.sqrt(squares / degrees)
    },
    exponential: (mean) => -mean * Math.log(1 - unit()),
    pick: (list) => list[Math.floor(unit() * list.length)]!,
  }
}
