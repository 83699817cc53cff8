import { message, say } from '@sumpbook/fluid'
import type { StopState } from './use-stop.ts'

/** Why a stop is passed by: each with what it means, short under its word and whole for whoever points at it or listens. */
const passings = [
  {
    reason: 'locked',
    word: message('Locked'),
    short: message('keep off'),
    full: message('Locked out or shut: somebody works on it, or nobody gets at it. Nothing is read or poured.'),
  },
  {
    reason: 'down',
    word: message('Down'),
    short: message('out of use'),
    full: message('It stands idle, out of use: nothing is read or poured until it runs again.'),
  },
] as const

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
    <div class={isAside ? 'stop-buttons aside' : 'stop-buttons'}>
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
      {isUnread &&
        passings.map(({ reason, word, short, full }) => (
          <button key={reason} type="button" title={say(full)} onClick={() => passBy(reason)} disabled={isAsked}>
            {say(word)}
            <small class="meant" aria-hidden="true">
              {say(short)}
            </small>
          </button>
        ))}
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
