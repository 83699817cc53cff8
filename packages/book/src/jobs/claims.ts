import { utc } from '../journal/order.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { Claim } from './claim-types.ts'
import { compareEntries } from './in-order.ts'

/** Something that ends a claim because it is done: a pour into the sump. */
export interface ClaimEnd {
  key: string
  /** UTC text. */
  at: string
}

/** A claim that says no end lasts for so long: as long as a pour takes with the walk (common practice, no source). */
export const claimMinutes = 30
/** None lasts longer: whoever forgets to let go holds up nobody for more than a shift. */
export const longestClaimHours = 12

/** The key of a sump's pour. */
export const pourKey = (sump: string): string => `pour:${sump}`
/** The key of a job. */
export const jobKey = (job: string): string => `job:${job}`

type Signoff = EntryOf<'signoff'>

/**
 * Who holds what at an instant, out of `signoff` entries with a `claim`. The first claim in time order (at, then id) holds; one that comes while
 * somebody else's stands is lost and is kept beside it. The same writer again lengthens it, `released` by the same writer ends it, and so does its
 * doing and its time. A claim that arrives late from a device that was out of reach counts from when it was made, as every device then sees.
 *
 * @param at UTC text; claims after it do not count
 */
export function foldClaims(
  signoffs: readonly Signoff[],
  { at, ends = [] }: { at: string; ends?: readonly ClaimEnd[] },
): Map<string, Claim> {
  const claims = new Map<string, Claim>()
  const endsOf = Map.groupBy(ends, ({ key }) => key)
  for (const signoff of signoffs.filter(isClaim).toSorted(compareEntries)) {
    const key = signoff.claim!
    const time = utc(signoff.at)
    if (time > at) continue
    const standing = standingAt(claims.get(key), time, endsOf.get(key))
    if (signoff.step === 'released') {
      if (standing !== null && writerOf(standing) === writerOf(signoff)) claims.delete(key)
      continue
    }
    if (signoff.step !== 'claimed') continue
    const { by = null, device = null, id } = signoff
    const made = { entry: id, by, device, at: time }
    if (standing === null) claims.set(key, { ...made, key, until: untilOf(signoff), lost: [] })
    else if (writerOf(standing) === writerOf(signoff)) {
      claims.set(key, { ...standing, until: later(standing.until, untilOf(signoff)) })
    } else standing.lost.push(made)
  }
  for (const [key, claim] of claims) {
    if (standingAt(claim, at, endsOf.get(key)) === null) claims.delete(key)
  }
  return claims
}

const isClaim = ({ claim }: Signoff) => claim !== undefined

/** A claim while it has neither run out nor been done. */
function standingAt(claim: Claim | undefined, at: string, ends: readonly ClaimEnd[] = []): Claim | null {
  if (claim === undefined || claim.until <= at) return null
  return ends.some((end) => end.at >= claim.at && end.at <= at) ? null : claim
}

/** Two devices of one person are one writer; without a name the device is. */
const writerOf = (of: { by?: string | null | undefined; device?: string | null | undefined }): string =>
  of.by != null ? `by ${of.by}` : `on ${of.device ?? ''}`

function untilOf({ at, until }: Signoff): string {
  const made = Date.parse(at)
  const asked = until === undefined ? made + claimMinutes * 60_000 : Date.parse(until)
  return new Date(Math.min(asked, made + longestClaimHours * 3_600_000)).toISOString()
}

const later = (a: string, b: string) => (a > b ? a : b)
