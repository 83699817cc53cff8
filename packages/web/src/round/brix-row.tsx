import { say } from '@sumpbook/fluid'
import { FaultWords } from '../fields/fields.tsx'
import { expectedOf, sayExpected } from './expected.ts'
import type { StopState } from './use-stop.ts'

/** What the refractometer shows, beside what is expected of it, and what is asked where a figure is far off. */
export function BrixRow({ stop: { sump, draft, verdict, type, step, setStep, brixField } }: { stop: StopState }) {
  const { typed } = draft
  const { faults, questions } = verdict
  const expected = expectedOf(sump, Date.now())
  return (
    <>
      <div class={step === 'brix' ? 'row read here' : 'row read'}>
        <label for="brix">
          {say('Refractometer')}
          {expected !== null && <small>{say('expected {range}', { range: sayExpected(expected.expected) })}</small>}
        </label>
        <input
          id="brix"
          ref={brixField}
          value={typed.brix}
          inputMode="none"
          autocomplete="off"
          aria-label={say('Refractometer, °Brix')}
          aria-invalid={faults.some(({ field }) => field === 'brix') || undefined}
          onFocus={() => setStep('brix')}
          onInput={(event) => type({ brix: event.currentTarget.value })}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return
            // Without this the same key press would go on to press the button it moves to.
            event.preventDefault()
            document.querySelector<HTMLElement>('.stop-buttons button:enabled')?.focus()
          }}
        />
        <span>°Brix</span>
      </div>
      {faults
        .filter(({ field }) => field === 'brix')
        .map((fault) => (
          <FaultWords fault={fault} />
        ))}
      {questions.map(({ question, yes, pointer, text }) => (
        <div class="fault" role="alert" key={pointer}>
          {question}{' '}
          <button type="button" onClick={() => type({ confirmed: { ...typed.confirmed, [pointer]: text } })}>
            {yes}
          </button>
        </div>
      ))}
    </>
  )
}
