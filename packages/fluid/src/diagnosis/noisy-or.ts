/** A network of two layers: causes that are there or not, findings that any of them can make, each by itself. */
export interface NoisyOr {
  /** Of each cause, 0 to 1, independent of each other. */
  priors: readonly number[]
  /** Of each finding: its probability with no cause at work, 0 to 1. */
  leaks: readonly number[]
  /** Of each cause: the findings it makes, with the probability that it makes them by itself. */
  links: readonly (readonly { finding: number; strength: number }[])[]
}

/** What was found: numbers of findings that are there and that were looked for and are not. What is in neither is not known. */
export interface Found {
  /** At most {@link mostPresent}, each once. */
  present: readonly number[]
  absent: readonly number[]
}

export interface Posterior {
  /** Probability of all that was found. */
  evidence: number
  /** Of each cause, together with all that was found: divided by `evidence` it is its probability now. */
  joint: number[]
}

/** So many findings can be there at once: the work doubles with each. */
export const mostPresent = 12

/**
 * The probability of every cause after what was found, several causes at once allowed:
 *
 *     P(finding absent | causes) = (1 − leak) × Π over causes that are there (1 − strength)
 *
 * Absent findings multiply each cause's odds. For the present ones the causes are taken one after the other, keeping the
 * probability of every set of findings already accounted for; forwards and backwards, as in a chain. Exact but for rounding:
 * only positive terms are summed, so that nothing cancels. Work: causes × links × 2^present.
 *
 * Source: noisy-OR, J. Pearl, Probabilistic Reasoning in Intelligent Systems (1988), §4.3.2, from memory; forward–backward sums.
 *
 * @throws {RangeError} more present findings than {@link mostPresent}
 * @example infer({ priors: [0.1], leaks: [0.05], links: [[{ finding: 0, strength: 0.6 }]] }, { present: [0], absent: [] }) // joint[0] / evidence = 0.58
 */
export function infer({ priors, leaks, links }: NoisyOr, { present, absent }: Found): Posterior {
  if (present.length > mostPresent)
    throw new RangeError(`present has ${present.length}, expected at most ${mostPresent}`)
  const bitOf = new Map(present.map((finding, place) => [finding, 1 << place]))
  const isAbsent = new Set(absent)
  const terms = priors.map((prior, cause): Term => {
    const of = links[cause]!
    const silent = of.reduce((left, { finding, strength }) => (isAbsent.has(finding) ? left * (1 - strength) : left), 1)
    const makes = of.flatMap(({ finding, strength }) => {
      const bit = bitOf.get(finding)
      return bit === undefined ? [] : [{ bit, strength }]
    })
    return { off: 1 - prior, on: prior * silent, makes }
  })
  // A cause that makes nothing of what is there stands apart from all others.
  const apart = terms.reduce((product, { off, on, makes }) => (makes.length === 0 ? product * (off + on) : product), 1)
  const outside = absent.reduce((product, finding) => product * (1 - leaks[finding]!), apart)
  const taking = terms.filter(({ makes }) => makes.length > 0)
  const before = forwards(
    taking,
    present.map((finding) => leaks[finding]!),
  )
  const { evidence, withCause } = backwards(taking, before)
  const joints = new Map(taking.map((term, n) => [term, withCause[n]! * outside]))
  return {
    evidence: evidence * outside,
    joint: terms.map((term) => joints.get(term) ?? (evidence * outside * term.on) / (term.off + term.on)),
  }
}

/** One cause: the weight of its absence, of its presence with what is absent, and what of the present findings it makes. */
interface Term {
  off: number
  on: number
  makes: readonly { bit: number; strength: number }[]
}

/** Before each cause, and after the last: the weight of every set of findings accounted for so far, by leaks first. */
function forwards(terms: readonly Term[], leaks: readonly number[]): Float64Array[] {
  let sets: Float64Array = new Float64Array(1 << leaks.length)
  sets[0] = 1
  for (const [place, strength] of leaks.entries()) make(sets, { bit: 1 << place, strength })
  const course = [sets]
  for (const { off, on, makes } of terms) {
    const made = sets.slice()
    for (const link of makes) make(made, link)
    mix(made, on, sets, off)
    course.push(made)
    sets = made
  }
  return course
}

/** From the last cause back: what every set still needs to become all that is there, and each cause's share in it. */
function backwards(terms: readonly Term[], before: readonly Float64Array[]) {
  const size = before[0]!.length
  let needs: Float64Array = new Float64Array(size)
  needs[size - 1] = 1
  const withCause: number[] = new Array(terms.length)
  for (let n = terms.length - 1; n >= 0; n -= 1) {
    const { off, on, makes } = terms[n]!
    const made = needs.slice()
    for (const link of makes) need(made, link)
    const sets = before[n]!
    let sum = 0
    for (let set = 0; set < size; set += 1) sum += sets[set]! * made[set]!
    withCause[n] = on * sum
    mix(made, on, needs, off)
    needs = made
  }
  return { evidence: before.at(-1)![size - 1]!, withCause }
}

/** With the cause and without it. */
function mix(made: Float64Array, on: number, sets: Float64Array, off: number): void {
  for (let set = 0; set < made.length; set += 1) made[set] = on * made[set]! + off * sets[set]!
}

/** A finding is made with its strength in every set that lacks it. */
function make(sets: Float64Array, { bit, strength }: { bit: number; strength: number }): void {
  for (let from = 0; from < sets.length; from += 2 * bit) {
    for (let set = from; set < from + bit; set += 1) {
      const moved = sets[set]! * strength
      sets[set]! -= moved
      sets[set + bit]! += moved
    }
  }
}

/** The same seen from behind. */
function need(sets: Float64Array, { bit, strength }: { bit: number; strength: number }): void {
  for (let from = 0; from < sets.length; from += 2 * bit) {
    for (let set = from; set < from + bit; set += 1) {
      sets[set] = (1 - strength) * sets[set]! + strength * sets[set + bit]!
    }
  }
}
