/** Chance for one thing of the simulation. The same name and seed give the same draws. */
export interface Random {
  /** 32 random bits, as a whole number from 0. */
  bits(): number
  /** From 0, below 1. */
  unit(): number
  /** From `low`, below `high`. */
  between(low: number, high: number): number
  /** True with this probability. */
  chance(probability: number): boolean
  /** Normally distributed about 0. */
  normal(sd: number): number
  /** One of a list that is not empty. */
  pick<T>(list: readonly T[]): T
}

type Words = [number, number, number, number]

/**
 * A stream of chance of its own for every name, so that what happens to one sump never shifts what happens to another.
 * Names are hashed with FNV-1a, the four words of state drawn from seed and hash by SplitMix32's finaliser, the
 * stream is xoshiro128**.
 *
 * Source: D. Blackman, S. Vigna, "Scrambled linear pseudorandom number generators" (2018); FNV-1a, RFC 9923.
 */
export function randomOf(seed: number, name: string): Random {
  let mixed = (seed ^ fnv1a(name)) >>> 0
  const word = () => {
    mixed = (mixed + 0x9e3779b9) >>> 0
    return finalised(mixed)
  }
  return randomFrom(starStar([word(), word(), word(), word()]))
}

/** xoshiro128**: 32 bits a call. The state must not be all zero. */
export function starStar(state: Words): () => number {
  let [a, b, c, d] = state
  return () => {
    const result = Math.imul(turned(Math.imul(b, 5), 7), 9) >>> 0
    const shifted = b << 9
    c ^= a
    d ^= b
    b ^= c
    a ^= d
    c ^= shifted
    d = turned(d, 11)
    return result
  }
}

/** FNV-1a over the name's UTF-16 units, 32 bits. */
export function fnv1a(name: string): number {
  let hash = 0x811c9dc5
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193)
  return hash >>> 0
}

function randomFrom(bits: () => number): Random {
  const unit = () => bits() / 2 ** 32
  return {
    bits,
    unit,
    between: (low, high) => low + (high - low) * unit(),
    chance: (probability) => unit() < probability,
    normal: (sd) => sd * Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit()),
    pick: (list) => list[Math.floor(unit() * list.length)]!,
  }
}

const turned = (x: number, by: number) => (x << by) | (x >>> (32 - by))

function finalised(x: number): number {
  let z = Math.imul(x ^ (x >>> 16), 0x85ebca6b)
  z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35)
  return (z ^ (z >>> 16)) >>> 0
}
