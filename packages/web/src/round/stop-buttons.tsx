import { say } from '@sumpbook/fluid'
import type { StopState } from './use-stop.ts'

/** What can be done at a stop, with the one that the page leads to set off. */
export function StopButtons({
  stop,
  open,
}: {
  stop: StopState
  open(form: 'otherwise' | 'not-poured' | 'claimed'): void
}) {
  const { sump, draft, verdict, claim, step, isAsked, canPour, settles, isHeld, writeDown, passBy } = stop
  const isUnread = draft.typed.brix.trim() === ''
  const isAside = isHeld || claim.other !== null
  return (
    <div class="stop-buttons">
      {canPour && !isAsked && (
        <>
          <button
            type="button"
            class={isAside ? 'wide' : 'main'}
            onClick={() => (claim.other === null ? stop.poured() : open('claimed'))}
          >
            {verdict.advice!.recipe.add === null ? say('Drawn off as written · next') : say('Poured as written · next')}
          </button>
          <button type="button" onClick={() => open('otherwise')}>
            {say('Otherwise')}
          </button>
          <button type="button" onClick={() => open('not-poured')}>
            {say('Not poured')}
          </button>
        </>
      )}
      {isUnread && step !== 'brix' && (
        <button type="button" class="main" onClick={() => stop.goTo(stop.next)}>
          {step === 'level'
            ? say('On to look, smell, oil')
            : step === 'signs' && stop.isTestLeft
              ? say('On to the tests')
              : say('On to the refractometer')}
        </button>
      )}
      {isUnread && (
        <>
          <button type="button" onClick={() => passBy('locked')} disabled={isAsked}>
            {say('Locked')}
          </button>
          <button type="button" onClick={() => passBy('down')} disabled={isAsked}>
            {say('Down')}
          </button>
        </>
      )}
      {settles && (
        <button
          type="button"
          class="main"
          onClick={() => void writeDown(null, undefined, `/sumps/${encodeURIComponent(sump.sump)}`)}
          disabled={isAsked}
        >
          {say('Write it down, see what fits')}
        </button>
      )}
      <button
        type="button"
        class={!isUnread && !settles && (!canPour || isAside) ? 'main' : ''}
        onClick={() => void writeDown(null)}
        disabled={isAsked}
      >
        {say('Next')}
      </button>
    </div>
  )
}
