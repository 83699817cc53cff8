import { say } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import type { SumpNow, Thing } from '../api/types.ts'
import { QueueState } from '../offline/queue-state.tsx'
import { ClaimHere } from './claim-here.tsx'
import { meantTaps } from './meant-tap.ts'
import { OpenHere } from './open-here.tsx'
import { PhotoRow } from './photo-row.tsx'
import { useScanHere } from './scan-here.ts'
import { signNotes, signsOf } from './signs.ts'
import { StopFoot } from './stop-foot.tsx'
import { StopRows } from './stop-rows.tsx'
import { Say, sayLast } from './stop-words.tsx'
import { type StopParts, useStop } from './use-stop.ts'

interface StopProps extends StopParts {
  place: { at: number; of: number }
  /** Refractometers, meters and strips of the shop. */
  instruments: readonly Thing[]
  /** Of the whole round, with the way to one of them: for a label that is scanned here. */
  stops: readonly SumpNow[]
  go(sump: string): void
}

/** For all stops: the first of two taps may have been at the one before. */
const isMeant = meantTaps()

/** One sump on the round: level first, three looks, then the refractometer, and the recipe at once. */
export function Stop({ place, instruments, stops, go, ...parts }: StopProps) {
  const stop = useStop(parts)
  const { sump, shop, draft, change, step, goTo, verdict, claim, isAsked, canPour, writeDown } = stop
  const { seen, photo } = draft
  const strange = useScanHere({ stops, draft, change, go })
  const claimHere = canPour && !isAsked && (
    <ClaimHere claim={claim} sump={sump.sump} name={sump.name} timeZone={shop.timeZone} />
  )
  const shown = [sump.sump, step, stop.asked, stop.onlyHere !== null].join(' ')
  return (
    <section
      class={`stop step-${step}`}
      aria-labelledby="stop-name"
      onClickCapture={(event) => {
        if (isMeant(shown, event.detail)) return
        event.preventDefault()
        event.stopPropagation()
      }}
    >
      <div class="stop-head">
        <Link href="/round">{say('Round')}</Link>
        <span>{say('{at} of {all}', { at: place.at, all: place.of })}</span>
        <QueueState />
      </div>
      <div class="stop-body">
        <h1 id="stop-name">{sump.name}</h1>
        <p class="sub">
          {sump.place !== null && `${sump.place} · `}
          {sayLast(sump, shop)}
        </p>
        {sump.doubts.length > 0 && (
          <details class="doubt stop-doubt">
            <summary>{say('A record here does not fit')}</summary>
            {sump.doubts.map(({ text }) => (
              <p>{text}</p>
            ))}
          </details>
        )}
        {strange !== null && (
          <p class="fault" role="alert">
            {say('The code says “{code}”: no sump of this book.', { code: strange })}
          </p>
        )}
        <OpenHere {...stop.open.above} />
        <StopRows stop={stop} instruments={instruments} />
        <OpenHere {...stop.open.below} />
        {claim.isNews && claimHere}
        <Say
          verdict={verdict}
          sump={sump}
          shop={shop}
          notes={verdict.notes}
          signs={signNotes(seen)}
          isAsked={isAsked}
        />
        {!claim.isNews && claimHere}
        <div class="beside">
          {!stop.hasTestsRow && (
            <button type="button" class="plain" onClick={() => goTo('tests')}>
              {say('Other tests')}
            </button>
          )}
          <PhotoRow photo={photo} change={(name) => change({ photo: name })} />
        </div>
        {stop.isAlone && photo !== null && (
          <p class="fault" role="alert">
            {say(
              'Found a photo alone; expected a look, a level or a reading that it goes with. Locked and down take it too.',
            )}
          </p>
        )}
        {signsOf(seen).length > 0 && (
          <button
            type="button"
            class="plain to-why"
            disabled={isAsked}
            onClick={() => void writeDown(null, undefined, `/sumps/${encodeURIComponent(sump.sump)}/why`)}
          >
            {say('Write it down and look for the cause')}
          </button>
        )}
      </div>
      <StopFoot stop={stop} />
    </section>
  )
}
