import { causes } from './causes/index.ts'
import { frequencies, leaks, priors } from './network.ts'
import type { NoisyOr } from './noisy-or.ts'
import { beyondLimit, fromSeveral } from './readings.ts'
import { signs } from './signs.ts'

/** Every finding that the tables know, signs first. */
export const findings: readonly string[] = [...signs, ...beyondLimit, ...fromSeveral].map(({ id }) => id)

const numberOf: ReadonlyMap<string, number> = new Map(findings.map((id, number) => [id, number]))

/** @throws {RangeError} a finding that the tables do not know */
export function findingNumber(id: string): number {
  const number = numberOf.get(id)
  if (number === undefined) throw new RangeError(`the tables know no finding "${id}"`)
  return number
}

/** The tables as a network: causes and findings by their number. */
export const tables: NoisyOr = {
  priors: causes.map(({ prior }) => priors[prior]),
  leaks: [...signs, ...beyondLimit, ...fromSeveral].map(({ leak }) => leaks[leak]),
  links: causes.map(({ shows }) =>
    shows.map(([finding, frequency]) => ({ finding: findingNumber(finding), strength: frequencies[frequency] })),
  ),
}
