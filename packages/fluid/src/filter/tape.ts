import type { Belief } from './belief.ts'

/** Mean and covariance at one moment. */
export interface Snapshot {
  mean: Float64Array
  cov: Float64Array
}

/** A move from what was known after some readings to what was expected before the next ones. */
export interface Step {
  /** After the readings before it. */
  before: Snapshot
  /** How every quantity after the move depends on those before it, row by row. */
  move: Float64Array
  /** Expected after the move, before anything was learnt. */
  after: Snapshot
}

/** The course of a belief, written down while it goes on. */
export interface Tape {
  steps: Step[]
  /** The move that is being made; null while readings are taken in. */
  moving: { before: Snapshot; move: Float64Array } | null
  /** Moments that were asked for: the number of steps before each. */
  stops: { steps: number; label: number }[]
}

export const newTape = (): Tape => ({ steps: [], moving: null, stops: [] })

const snapshot = ({ mean, cov }: Belief): Snapshot => ({ mean: mean.slice(), cov: cov.slice() })

function begin(tape: Tape, belief: Belief): { before: Snapshot; move: Float64Array } {
  if (tape.moving !== null) return tape.moving
  const move = new Float64Array(belief.size ** 2)
  for (let i = 0; i < belief.size; i++) move[i * belief.size + i] = 1
  tape.moving = { before: snapshot(belief), move }
  return tape.moving
}

/** The first `moving` quantities change as `a` says; see `spread`. */
export function recordMove(tape: Tape, belief: Belief, moving: number, a: Float64Array): void {
  const { size: n } = belief
  const { move } = begin(tape, belief)
  const rows = new Float64Array(moving * n)
  for (let i = 0; i < moving; i++) {
    for (let k = 0; k < n; k++) {
      const factor = a[i * n + k]!
      if (factor !== 0) for (let j = 0; j < n; j++) rows[i * n + j]! += factor * move[k * n + j]!
    }
  }
  move.set(rows)
}

/** One quantity forgets what it was. */
export function recordRenewal(tape: Tape, belief: Belief, i: number): void {
  const { size: n } = belief
  begin(tape, belief).move.fill(0, i * n, (i + 1) * n)
}

/** Noise comes in: a move that changes no mean. */
export function recordNoise(tape: Tape, belief: Belief): void {
  begin(tape, belief)
}

/** Something is about to be learnt: the move before it is over. */
export function recordLearning(tape: Tape, belief: Belief): void {
  if (tape.moving === null) return
  tape.steps.push({ ...tape.moving, after: snapshot(belief) })
  tape.moving = null
}

/** Marks this moment, to be asked about once all is known. */
export function stopHere(belief: Belief, label: number): void {
  const { tape } = belief
  if (tape === null) return
  recordLearning(tape, belief)
  tape.stops.push({ steps: tape.steps.length, label })
}
