import { say } from '@sumpbook/fluid'
import { useEffect, useRef } from 'preact/hooks'
import { useClaims } from '../api/claims.ts'
import { keepHere, sendSoon, useOutbox } from '../entry/book-outbox.ts'
import { stampNow } from '../entry/this-device.ts'
import { ClaimLine } from '../parts/claim-line.tsx'
import { claimNow } from '../parts/claim-now.ts'
import { holds } from '../parts/whose-claim.ts'

/** Who pours at this sump: the claim that stands, and whether it is somebody else's, or was while one stood here. */
export function useClaimHere(sump: string) {
  const answer = useClaims()
  const key = `pour:${sump}`
  const said = answer.data?.find((claim) => claim.key === key) ?? null
  const waiting = useOutbox()
    .all.filter(({ problem, taken }) => problem === null && (taken === null || taken.at > answer.dataUpdatedAt))
    .map(({ entry }) => entry)
  const here = stampNow()
  const claim = claimNow(key, said, { waiting, here, now: Date.now() })
  const other = claim !== null && !holds(claim, here) ? (claim.by ?? say('Another device')) : null
  const before = useRef<string | null>(null)
  useEffect(() => {
    if (other !== null) before.current = other
  }, [other])
  const gone = other === null && claim === null ? before.current : null
  // What somebody else does comes before the recipe.
  return { key, claim, other, gone, isNews: other !== null || gone !== null }
}

/** A tap says that one pours it, so that a second phone does not. */
export function ClaimHere({
  claim: { key, claim, gone },
  sump,
  name,
  timeZone,
}: {
  claim: ReturnType<typeof useClaimHere>
  sump: string
  name: string
  timeZone: string
}) {
  return (
    <div class="claim-here">
      {gone !== null && (
        <p class="note">
          {say('{who} was on it and no longer is: it may be poured by now. Read it again before anything goes in.', {
            who: gone,
          })}
        </p>
      )}
      <ClaimLine
        claimKey={key}
        claim={claim}
        sump={sump}
        name={name}
        timeZone={timeZone}
        isBusy={false}
        write={(items) => void keepHere(items).then(() => sendSoon())}
      />
    </div>
  )
}
