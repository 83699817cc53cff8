/** An axis in whole steps of 1, 2 or 5. */
export interface Axis {
  from: number
  to: number
  step: number
  ticks: number[]
}

/** An axis that holds all values in at most `most` steps; it begins at 0 where `zero` is asked for. */
export function axisOf(values: readonly number[], { most = 6, zero = false } = {}): Axis {
  const finite = values.filter((value) => Number.isFinite(value))
  const [least, largest] = finite.length === 0 ? [0, 1] : [Math.min(...finite), Math.max(...finite)]
  const low = zero ? Math.min(0, least) : least
  const span = largest - low || Math.abs(largest) || 1
  const step = stepOf(span / most)
  const from = Math.floor(low / step + 1e-9) * step
  const to = Math.max(Math.ceil(largest / step - 1e-9) * step, from + step)
  const ticks = Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => plain(from + i * step))
  return { from: plain(from), to: plain(to), step, ticks }
}

/** The smallest of 1, 2, 5 times a power of ten that is at least `least`. */
function stepOf(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least))
  const factor = [1, 2, 5, 10].find((candidate) => candidate * power >= least * (1 - 1e-9)) ?? 10
  return factor * power
}

/** 0.30000000000000004 is 0.3. */
const plain = (value: number) => Number(value.toPrecision(12))

/** Digits that a tick of a step needs. */
export const decimalsOf = (step: number): number => Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
