import { mersenneTwister } from '../estimate/simulate/random.ts'

/** Whole numbers from 0, below a bound. */
export type Dice = (below: number) => number

/** The dice of one case: the same seed and number throw the same. */
export function diceOf(seed: number, n: number): Dice {
  // Knuth's multiplicative constant spreads neighbouring cases over the seeds.
  const next = mersenneTwister((seed + Math.imul(n + 1, 2_654_435_761)) >>> 0)
  return (below) => next() % below
}

/** Edits a case gets at most. */
const editsAtMost = 6

/** A file made from one that is good, or from another such file's pieces, by some edits. */
export function mutated(dice: Dice, seeds: readonly Uint8Array[], tokens: readonly Uint8Array[]): Uint8Array {
  let bytes = seeds[dice(seeds.length)]!
  for (let edits = dice(editsAtMost); edits >= 0; edits--) bytes = edited(bytes, dice, seeds, tokens)
  return bytes
}

function edited(
  bytes: Uint8Array,
  dice: Dice,
  seeds: readonly Uint8Array[],
  tokens: readonly Uint8Array[],
): Uint8Array {
  const at = dice(bytes.length + 1)
  const length = dice(Math.min(64, bytes.length - at) + 1)
  const [before, cut, after] = [bytes.subarray(0, at), bytes.subarray(at, at + length), bytes.subarray(at + length)]
  switch (dice(7)) {
    case 0: {
      const turned = Uint8Array.from(bytes)
      if (at < turned.length) turned[at]! ^= 1 << dice(8)
      return turned
    }
    case 1:
      return joined(before, after)
    case 2:
      return joined(before, cut, cut, after)
    case 3:
      return before
    case 4: {
      const other = seeds[dice(seeds.length)]!
      const from = dice(other.length + 1)
      return joined(before, other.subarray(from, from + dice(200)), after)
    }
    default:
      return joined(before, tokens[dice(tokens.length)]!, after)
  }
}

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  return Buffer.concat(parts)
}

/** Words as bytes. */
export const tokensOf = (words: readonly string[]): Uint8Array[] => words.map((word) => Buffer.from(word))
