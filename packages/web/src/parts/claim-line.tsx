import type { Claim } from '@sumpbook/book/today'
import type { Entry } from '../api/types.ts'
import { claimEntry } from '../cleanouts/step-entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { sayTime } from '../say/when.ts'
import { holds, lostHere } from './whose-claim.ts'

interface ClaimLineProps {
  /** `pour:mill3`, `job:<id>`, a duty's key. */
  claimKey: string
  claim: Claim | null
  sump: string | null
  /** Of what is claimed, for the queue of things to send. */
  name: string
  timeZone: string
  isBusy: boolean
  write(items: readonly { entry: Entry; label: string }[]): void
}

/** Who has said that they do it; a tap says so, and lets go again. */
export function ClaimLine({ claimKey, claim, sump, name, timeZone, isBusy, write }: ClaimLineProps) {
  const say = (step: 'claimed' | 'released') =>
    write([
      {
        entry: claimEntry(claimKey, step, sump, stampNow()),
        label: `${name}: ${step === 'claimed' ? 'taken on' : 'let go'}`,
      },
    ])
  if (claim === null) {
    return (
      <button type="button" class="plain" disabled={isBusy} onClick={() => say('claimed')}>
        I am on it
      </button>
    )
  }
  const here = stampNow()
  const who = claim.by ?? 'Another device'
  if (holds(claim, here)) {
    return (
      <span class="claim">
        You are on it until {sayTime(claim.until, timeZone)}.
        {claim.lost.length > 0 && ` ${claim.lost.map(({ by }) => by ?? 'another device').join(', ')} wanted it too.`}
        <button type="button" class="plain" disabled={isBusy} onClick={() => say('released')}>
          Let go
        </button>
      </span>
    )
  }
  return (
    <span class="claim">
      {lostHere(claim, here)
        ? `${who} was first, at ${sayTime(claim.at, timeZone)}: leave it to them.`
        : `${who} is on it since ${sayTime(claim.at, timeZone)}.`}
    </span>
  )
}
