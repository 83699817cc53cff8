import type { Claim, LostClaim } from '@sumpbook/book/today'
import type { Stamp } from '../entry/stamp.ts'

type Writer = Pick<LostClaim, 'by' | 'device'> & { person?: string | null }

/** Whether a claim was made by whoever writes here: by the person, or without one on this device. */
export const holds = (writer: Writer, here: Pick<Stamp, 'by' | 'device'>): boolean => {
  const by = writer.person ?? writer.by
  return by === null ? writer.device !== null && writer.device === here.device : by === here.by
}

/** Whether whoever writes here claimed it too, and came later. */
export const lostHere = ({ lost }: Claim, here: Pick<Stamp, 'by' | 'device'>): boolean =>
  lost.some((claim) => holds(claim, here))
