import { message, say } from '@sumpbook/fluid'
import type { ShopOfBook } from '../api/types.ts'
import { Cautions } from '../parts/cautions.tsx'
import { sayDayAndTime } from '../say/when.ts'
import type { JobStep } from './asks.ts'
import type { StepFigures } from './step-entries.ts'
import { StepForm } from './step-form.tsx'

interface SheetStepProps {
  step: JobStep
  ordinal: number
  /** Whether it is the one to do now. */
  isNext: boolean
  /** Signed on this device, and not in the book yet. */
  isWaiting: boolean
  /** Whether the job can still be signed. */
  isOpen: boolean
  /** Whether steps are signed in another order than theirs. */
  outOfTurn: boolean
  isBusy: boolean
  shop: ShopOfBook
  sign(figures: StepFigures): void
}

/** A step: what to do and what to mind first, then who signed it or the form to sign it with. */
export function SheetStep({ step, ordinal, isNext, isWaiting, isOpen, outOfTurn, isBusy, shop, sign }: SheetStepProps) {
  const { title, text, cautions, signed, verdict, isDone } = step
  const state = isDone ? 'done' : isNext ? 'next' : 'ahead'
  const showsForm = isOpen && !isDone && !isWaiting && (isNext || outOfTurn)
  return (
    <li class={`sheet-step ${state}`} aria-current={isNext ? 'step' : undefined}>
      <div class="step-mark" aria-hidden="true">
        {isDone ? '✓' : ordinal}
      </div>
      <div class="step-words">
        <h2>{title}</h2>
        {isDone ? (
          <details class="was">
            <summary>{say('What it was')}</summary>
            <p>{text}</p>
            <Cautions cautions={cautions} />
          </details>
        ) : (
          <>
            <p>{text}</p>
            <Cautions cautions={cautions} />
          </>
        )}
        {verdict !== null && <p class={verdict.accepted === true ? 'note' : 'fault'}>{verdict.sentences.join(' ')}</p>}
        {signed !== null && <SignedWords step={step} timeZone={shop.timeZone} />}
        {isWaiting && <p class="note">{say('Signed on this device; it counts once it is sent.')}</p>}
        {showsForm && <StepForm step={step} units={shop.units} isBusy={isBusy} sign={sign} />}
        {signed === null && (
          <p class="print-only sign-line">
            {step.signs === 'keeper'
              ? say('Done by (keeper) ______________________ at ____________')
              : say('Done by ______________________ at ____________')}
            {step.asks.map((key) => ` · ${say(printed[key])} ________`).join('')}
          </p>
        )}
      </div>
    </li>
  )
}

const printed: Record<JobStep['asks'][number], string> = {
  freshPh: message('pH as poured'),
  rinsePh: message('pH at the drain'),
  look: message('look'),
  smell: message('smell'),
  brix: '°Brix',
  ph: 'pH',
  bacteria: message('CFU/mL'),
  oil: message('oil'),
  lot: message('lot'),
}

function SignedWords({ step: { signed, again }, timeZone }: { step: JobStep; timeZone: string }) {
  if (signed === null) return null
  const when = (at: string) => sayDayAndTime(at, timeZone)
  const who = ({ by }: { by: string | null }) => by ?? say('somebody')
  const told = { who: who(signed), when: when(signed.at) }
  return (
    <>
      <p class="signed">
        {signed.note === null
          ? say('Signed by {who}, {when}', told)
          : say('Signed by {who}, {when} · “{note}”', { ...told, note: signed.note })}
      </p>
      {again.map((one) => (
        <p key={one.entry} class="quiet">
          {say('{who} signed it as well, {when}: {first} was first.', {
            who: who(one),
            when: when(one.at),
            first: who(signed),
          })}
        </p>
      ))}
    </>
  )
}
