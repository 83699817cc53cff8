import { availableParallelism, cpus, totalmem } from 'node:os'

/** The machine a figure was measured on. */
export function machine(): Record<string, string | number> {
  return {
    processor: cpus()[0]?.model ?? 'unknown',
    cores: availableParallelism(),
    memoryGiB: Math.round(totalmem() / 2 ** 30),
    system: `${process.platform} ${process.arch}`,
    node: process.version,
  }
}

/** The middle of some figures. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const middle = sorted.length / 2
  return sorted.length % 2 === 1 ? sorted[Math.floor(middle)]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}

/** To three significant digits. */
export const digits = (value: number): number => Number(value.toPrecision(3))
