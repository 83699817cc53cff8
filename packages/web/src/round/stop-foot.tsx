import { say, trueLitres } from '@sumpbook/fluid'
import { skipEntry } from '../entry/entries.ts'
import { inTrueLitres } from '../standing/true-litres.ts'
import { NotPouredForm, OtherwiseForm } from '../today/pour-forms.tsx'
import { StopButtons } from './stop-buttons.tsx'
import { StopKeys } from './stop-keys.tsx'
import type { StopState } from './use-stop.ts'

/** What stays under the thumb at a stop: keys and buttons, or in their place the one thing that is asked. */
export function StopFoot({ stop }: { stop: StopState }) {
  const { sump, shop, verdict, claim, step, test, asked, setAsked, writeDown, onlyHere } = stop
  const { advice, level } = verdict
  const close = () => setAsked(null)
  if (onlyHere !== null) return <OnlyHere goOn={onlyHere} />
  if (asked === 'claimed') {
    return <ClaimedFoot who={claim.other ?? claim.gone ?? say('Somebody')} poured={stop.poured} back={close} />
  }
  return (
    <div class="stop-foot">
      {asked === 'otherwise' && (
        <OtherwiseForm
          item={advice!}
          sump={inTrueLitres(sump)}
          units={shop.units}
          volume={level === null ? (sump.volume?.mean ?? null) : trueLitres(level.litres, sump.bench, sump.mark)}
          write={(build) => void writeDown('poured', build)}
          cancel={close}
        />
      )}
      {asked === 'not-poured' && (
        <NotPouredForm
          sump={sump.name}
          write={(note) => void writeDown('not poured', (stamp) => [skipEntry('not poured', note, sump.sump, stamp)])}
          cancel={close}
        />
      )}
      {asked === null && (
        <>
          {step !== 'signs' && (step !== 'tests' || test !== null) && <StopKeys stop={stop} />}
          <StopButtons stop={stop} open={setAsked} />
        </>
      )}
    </div>
  )
}

/** Neither device nor book took what was written. */
function OnlyHere({ goOn }: { goOn(): void }) {
  return (
    <div class="stop-foot" role="alert">
      <p class="fault">
        {say(
          'This device did not keep it and the book is out of reach. Only this open page holds it: leave the page open until it is sent. What was typed stays in the fields until then.',
        )}
      </p>
      <div class="stop-buttons">
        <button type="button" class="main" onClick={goOn}>
          {say('Go on')}
        </button>
      </div>
    </div>
  )
}

/** Somebody else said that they pour here. */
function ClaimedFoot({ who, poured, back }: { who: string; poured(): void; back(): void }) {
  return (
    <div class="stop-foot" role="alert">
      <p>
        {say('{who} said first that they pour here. Write it down as poured only if it was you who poured.', { who })}
      </p>
      <div class="stop-buttons">
        <button type="button" onClick={poured}>
          {say('I poured it')}
        </button>
        <button type="button" class="main" onClick={back}>
          {say('Back')}
        </button>
      </div>
    </div>
  )
}
