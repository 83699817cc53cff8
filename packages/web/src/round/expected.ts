import { sayNumber, weighReading } from '@sumpbook/fluid'
import type { SumpNow } from '../api/types.ts'

/** What is expected is worked out anew by the book whenever it is asked; a device out of reach goes on with it for so long. */
const expectedForMs = 12 * 3_600_000

/** What a refractometer is expected to show; null where nothing is, or where it was worked out too long ago. */
export function expectedOf({ expected, concentration, asOf, doubts }: SumpNow, now: number) {
  const isFresh = Math.abs(now - Date.parse(asOf)) < expectedForMs
  if (expected === null || concentration === null || !isFresh || doubts.length > 0) return null
  return { concentration, expected }
}

/** "4.9–5.6", to the tenth. */
export const sayExpected = ({ brix }: { brix: { low90: number; high90: number } }): string =>
  `${sayNumber(Math.max(0, brix.low90), 1)}–${sayNumber(brix.high90, 1)}`

/** A reading beside what was expected of it; null where nothing was. */
export function weighedWith(brix: number, sump: SumpNow, now: number) {
  const standing = expectedOf(sump, now)
  return standing === null ? null : weighReading(brix, standing)
}
