import { say } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import type { Fault } from './read.ts'

interface FieldProps {
  label: string
  value: string
  onInput(text: string): void
  hint?: ComponentChildren
  fault?: Fault | string | null
  required?: boolean
}

/** What a phone's keyboard writes on its Enter key. */
export type EnterKey = 'next' | 'go'

/** A line of text with its label; keeps what was typed until it parses. */
export function TextField({
  label,
  value,
  onInput,
  hint,
  fault,
  required,
  numeric = false,
  list,
  enter,
}: FieldProps & { numeric?: boolean; list?: readonly string[]; enter?: EnterKey | undefined }) {
  const id = useId()
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        value={value}
        required={required}
        inputMode={numeric ? 'decimal' : 'text'}
        enterKeyHint={enter}
        autocomplete="off"
        list={list === undefined ? undefined : `${id}-list`}
        aria-invalid={fault == null ? undefined : 'true'}
        aria-describedby={`${id}-says`}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
      {list !== undefined && (
        <datalist id={`${id}-list`}>
          {list.map((choice) => (
            <option value={choice} />
          ))}
        </datalist>
      )}
      <FieldSays id={`${id}-says`} hint={hint} fault={fault} />
    </div>
  )
}

/** A day, typed or picked as the device does it. */
export function DayField({ label, value, onInput, hint, fault, max }: FieldProps & { max?: string }) {
  const id = useId()
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="date"
        value={value}
        max={max}
        aria-invalid={fault == null ? undefined : 'true'}
        aria-describedby={`${id}-says`}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
      <FieldSays id={`${id}-says`} hint={hint} fault={fault} />
    </div>
  )
}

/** One of several. */
export function SelectField({
  label,
  value,
  onInput,
  hint,
  fault,
  choices,
}: FieldProps & { choices: readonly (readonly [value: string, words: string])[] }) {
  const id = useId()
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-invalid={fault == null ? undefined : 'true'}
        aria-describedby={`${id}-says`}
        onChange={(event) => onInput(event.currentTarget.value)}
      >
        {choices.map(([choice, words]) => (
          <option value={choice} selected={choice === value}>
            {words}
          </option>
        ))}
      </select>
      <FieldSays id={`${id}-says`} hint={hint} fault={fault} />
    </div>
  )
}

function FieldSays({
  id,
  hint,
  fault,
}: {
  id: string
  hint: ComponentChildren
  fault: Fault | string | null | undefined
}) {
  return (
    <div id={id}>
      {fault != null && <FaultWords fault={fault} />}
      {hint !== undefined && <div class="hint">{hint}</div>}
    </div>
  )
}

/** What was found and what was expected, at its place. */
export function FaultWords({ fault }: { fault: Fault | string }) {
  return (
    <div class="fault" role="alert">
      {typeof fault === 'string' ? fault : say('Found {found}; expected {expected}.', { ...fault })}
    </div>
  )
}

/** A few choices of one tap each. */
export function Taps({
  legend,
  name,
  value,
  choices,
  onPick,
}: {
  legend: string
  name: string
  value: string | null
  choices: readonly (readonly [value: string, words: string])[]
  onPick(value: string): void
}) {
  return (
    <fieldset class="taps">
      <legend>{legend}</legend>
      <div class="taps-row">
        {choices.map(([choice, words]) => (
          <label class={choice === value ? 'tap here' : 'tap'}>
            <input type="radio" name={name} checked={choice === value} onChange={() => onPick(choice)} />
            <span>{words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
