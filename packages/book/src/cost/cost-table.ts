import { type Cents, type MicroCents, toCents } from '@sumpbook/fluid'
import type { CostPart, PartCents } from './answer-types.ts'
import { type CostLine, costParts } from './cost-lines.ts'

/** A month of one sump, or of the shop (null), part by part. */
export interface CostCell {
  month: string
  sump: string | null
  part: CostPart
  cents: Cents
  /** Of these, what rests on litres that were reckoned from a level. */
  estimated: Cents
}

/** The smallest sums that are rounded, each once; all others are sums of these. */
export function cellsOf(lines: readonly CostLine[]): CostCell[] {
  const sums = new Map<string, { line: CostLine; written: MicroCents; estimated: MicroCents }>()
  for (const line of lines) {
    const key = JSON.stringify([line.month, line.sump, line.part])
    const sum = sums.get(key) ?? { line, written: 0, estimated: 0 }
    sum[line.estimated ? 'estimated' : 'written'] += line.cost
    sums.set(key, sum)
  }
  return [...sums.values()].map(({ line: { month, sump, part }, written, estimated }) => {
    const about = toCents(estimated)
    return { month, sump, part, cents: toCents(written) + about, estimated: about }
  })
}

export const sumCents = (cells: readonly { cents: Cents }[]): Cents => cells.reduce((sum, { cents }) => sum + cents, 0)

export const sumEstimated = (cells: readonly CostCell[]): Cents =>
  cells.reduce((sum, { estimated }) => sum + estimated, 0)

export function partsOf(cells: readonly CostCell[]): PartCents {
  const of = (part: CostPart) => sumCents(cells.filter((cell) => cell.part === part))
  return Object.fromEntries(costParts.map((part) => [part, of(part)])) as PartCents
}
