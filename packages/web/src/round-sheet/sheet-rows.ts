import type { SumpNow, Today } from '../api/types.ts'
import { inWalkingOrder } from '../standing/walking-order.ts'

/** A sump's line on a round sheet. */
export interface SheetRow {
  sump: SumpNow
  /** What is to be done there today, a few words each: its pour, then its other duties. */
  due: string[]
}

/**
 * The sumps in walking order, each with what is due at it today. What somebody put off is left out; what is left for later in the shift
 * is not: whoever walks with paper sees no list.
 */
export function sheetRows(
  sumps: readonly SumpNow[],
  today: Pick<Today, 'items' | 'later' | 'due'> | undefined,
): SheetRow[] {
  const items = [...(today?.items ?? []), ...(today?.later?.items ?? [])]
  const duties = [...(today?.due ?? []), ...(today?.later?.due ?? [])]
  return sumps.toSorted(inWalkingOrder).map((sump) => ({
    sump,
    due: [
      ...items.filter((item) => item.sump === sump.sump).map(({ words }) => words.headline),
      ...duties.filter((duty) => duty.sump === sump.sump).map(({ headline }) => headline),
    ],
  }))
}
