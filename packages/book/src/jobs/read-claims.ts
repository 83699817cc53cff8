import { withdrawnBy } from '../journal/withdrawn.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { JournalReader } from '../store/store.ts'
import type { Claim } from './claim-types.ts'
import { type ClaimEnd, foldClaims, longestClaimHours, pourKey } from './claims.ts'

/** What is done about a sump ends the claim of its pour: it was poured, drawn off, changed or passed by. */
const pouring = ['addition', 'charge', 'drawoff', 'skip'] as const

/** Who holds what now. */
export async function readClaims(journal: JournalReader, { until }: { until: Date }): Promise<Map<string, Claim>> {
  const at = until.toISOString()
  const since = new Date(until.getTime() - longestClaimHours * 3_600_000).toISOString()
  const query = { order: 'time', since, until: at } as const
  const signoffs = await journal.entries({ ...query, kinds: ['signoff'] })
  const claiming = signoffs.filter(({ body }) => body.includes('"claim"'))
  if (claiming.length === 0) return new Map()
  const [pours, voids] = await Promise.all([journal.entries({ ...query, kinds: pouring }), journal.voids()])
  const withdrawn = withdrawnBy(voids)
  const ends = pours.flatMap(({ id, sump, at: time }): ClaimEnd[] =>
    sump === null || withdrawn.has(id) ? [] : [{ key: pourKey(sump), at: time }],
  )
  const standing = claiming
    .filter(({ id }) => !withdrawn.has(id))
    .map(({ body }) => JSON.parse(body) as EntryOf<'signoff'>)
  return foldClaims(standing, { at, ends })
}
