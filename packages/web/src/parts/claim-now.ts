import type { Claim } from '@sumpbook/book/today'
import type { Entry } from '../api/types.ts'
import type { Stamp } from '../entry/stamp.ts'
import { holds } from './whose-claim.ts'

/** As long as the book lets a claim stand that says no end. */
const claimMs = 30 * 60_000

/**
 * Who holds something, with what this device has said of it and not sent: a claim of here that comes after another's is lost, as in
 * the book. A claim that has run out is none.
 *
 * @param waiting entries of this device that the book's answer does not hold, in the order of writing
 */
export function claimNow(
  key: string,
  said: Claim | null,
  { waiting, here, now }: { waiting: readonly Entry[]; here: Pick<Stamp, 'by' | 'device'>; now: number },
): Claim | null {
  const stands = (claim: Claim | null) => (claim !== null && Date.parse(claim.until) > now ? claim : null)
  let claim = stands(said)
  for (const entry of waiting) {
    if (entry.kind !== 'signoff' || entry.claim !== key) continue
    const mine = { entry: entry.id, by: entry.by ?? null, device: entry.device ?? null, at: entry.at }
    if (entry.step === 'released') {
      if (claim !== null && holds(claim, here)) claim = null
    } else if (claim === null) {
      claim = stands({ ...mine, key, until: new Date(Date.parse(entry.at) + claimMs).toISOString(), lost: [] })
    } else if (!holds(claim, here)) claim = { ...claim, lost: [...claim.lost, mine] }
  }
  return claim
}
