import { say } from '@sumpbook/fluid'
import { useEffect } from 'preact/hooks'
import { FaultWords } from '../fields/fields.tsx'
import { expectedOf, sayExpected } from './expected.ts'
import { stopsOf } from './signs.ts'
import type { StopState } from './use-stop.ts'

/** What the refractometer shows, beside what is expected of it, and what is asked where a figure is far off. */
export function BrixRow({ stop }: { stop: StopState }) {
  const { sump, draft, verdict, type, step, setStep, brixField, open } = stop
  const { typed, seen } = draft
  const { faults, questions } = verdict
  const expected = expectedOf(sump, Date.now())
  // What follows from a figure is what one waits for: it gets the room, and what was found before scrolls off above; never what must stop at once,
  // nor what is not finished here.
  const staysInSight = stopsOf(seen).length > 0 || open.above.jobs.length > 0 || open.above.findings.length > 0
  useEffect(() => {
    if (step === 'brix' && typed.brix !== '' && !staysInSight) bringUp(brixField.current)
  }, [step, typed.brix, questions.length, staysInSight, brixField])
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

/** To the upper edge of what scrolls, under the sump's name; where all of a stop is in sight nothing moves. */
function bringUp(field: HTMLElement | null): void {
  const [row, body] = [field?.closest('.row'), field?.closest('.stop-body')]
  const name = body?.querySelector('h1')
  if (row == null || body == null || name == null || body.scrollHeight <= body.clientHeight) return
  body.scrollTop += row.getBoundingClientRect().top - body.getBoundingClientRect().top - name.offsetHeight - 4
}
