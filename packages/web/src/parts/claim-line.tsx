import type { Claim } from '@sumpbook/book/today'
import { say } from '@sumpbook/fluid'
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
  const put = (step: 'claimed' | 'released') =>
    write([
      {
        entry: claimEntry(claimKey, step, sump, stampNow()),
        label: step === 'claimed' ? say('{name}: taken on', { name }) : say('{name}: let go', { name }),
      },
    ])
  if (claim === null) {
    return (
      <button type="button" class="plain" disabled={isBusy} onClick={() => put('claimed')}>
        {say('I am on it')}
      </button>
    )
  }
  const here = stampNow()
  const who = claim.by ?? say('Another device')
  if (holds(claim, here)) {
    return (
      <span class="claim">
        {say('You are on it until {time}.', { time: sayTime(claim.until, timeZone) })}
        {claim.lost.length > 0 &&
          ` ${say('{names} wanted it too.', { names: claim.lost.map(({ by }) => by ?? say('another device')).join(', ') })}`}
        <button type="button" class="plain" disabled={isBusy} onClick={() => put('released')}>
          {say('Let go')}
        </button>
      </span>
    )
  }
  return (
    <span class="claim">
      {lostHere(claim, here)
        ? say('{who} was first, at {time}: leave it to them.', { who, time: sayTime(claim.at, timeZone) })
        : say('{who} is on it since {time}.', { who, time: sayTime(claim.at, timeZone) })}
    </span>
  )
}
