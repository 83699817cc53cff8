import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Entry, Units } from '../api/types.ts'
import type { Stamp } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { DayField, SelectField, TextField } from '../fields/fields.tsx'
import { shopUnits } from '../say/units.ts'
import { readSmall, type SmallField, type SmallTexts, type SmallValues } from './form-fields.ts'

interface SmallFormProps {
  /** What it is for, for those who do not see it. */
  title: string
  fields: readonly SmallField[]
  first?: SmallTexts
  units: Units
  /** The last day that can be picked. */
  today: string
  submitWords: string
  isBusy: boolean
  /** A fault of the form as a whole; null where there is none. */
  fault?(values: SmallValues): string | null
  /** A sentence that is asked once before it is written; null where nothing is odd. */
  doubt?(values: SmallValues): string | null
  build(values: SmallValues, stamp: Stamp): Entry[]
  write(entries: Entry[]): void
  cancel(): void
  /** Texts that follow from another text: a choice that fills fields. */
  follow?(texts: SmallTexts, key: string): SmallTexts
}

/** A form of a few fields that becomes an entry or two. */
export function SmallForm(props: SmallFormProps) {
  const { title, fields, first = {}, units, today, submitWords, isBusy, write, cancel } = props
  const [texts, setTexts] = useState(first)
  const [isTried, setTried] = useState(false)
  const [asked, setAsked] = useState<string | null>(null)
  const read = readSmall(texts, fields, units)
  const whole = 'values' in read ? (props.fault?.(read.values) ?? null) : null
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if ('faults' in read || whole !== null) return
    const doubt = props.doubt?.(read.values) ?? null
    if (doubt !== null && doubt !== asked) {
      setAsked(doubt)
      return
    }
    write(props.build(read.values, stampNow()))
  }
  const change = (key: string, text: string) => {
    setAsked(null)
    const next = { ...texts, [key]: text }
    setTexts(props.follow?.(next, key) ?? next)
  }
  return (
    <form class="pour-form small-form" aria-label={title} noValidate onSubmit={submit}>
      {fields.map((field) => (
        <Field
          key={field.key}
          field={field}
          units={units}
          today={today}
          value={texts[field.key] ?? ''}
          fault={isTried && 'faults' in read ? (read.faults[field.key] ?? null) : null}
          onInput={(text) => change(field.key, text)}
        />
      ))}
      {isTried && whole !== null && (
        <p class="fault" role="alert">
          {whole}
        </p>
      )}
      {asked !== null && (
        <p class="fault" role="alert">
          {asked}
        </p>
      )}
      <div class="buttons">
        <button type="submit" class="main" disabled={isBusy}>
          {asked === null ? submitWords : say('It is right, write it down')}
        </button>
        <button type="button" class="plain" onClick={cancel}>
          {say('Back')}
        </button>
      </div>
    </form>
  )
}

interface FieldOfFormProps {
  field: SmallField
  units: Units
  today: string
  value: string
  fault: { found: string; expected: string } | null
  onInput(text: string): void
}

function Field({ field, units, today, value, fault, onInput }: FieldOfFormProps) {
  const { kind, label, hint, required, choices = [], list } = field
  const shared = {
    label: kind === 'volume' ? `${label}, ${say(shopUnits[units].volumeName)}` : label,
    value,
    fault,
    onInput,
    ...(hint === undefined ? {} : { hint }),
    ...(required === undefined ? {} : { required }),
  }
  if (kind === 'choice') return <SelectField {...shared} choices={choices} />
  if (kind === 'day')
    return <DayField {...shared} {...(field.key === 'on' || field.key === 'made' ? { max: today } : {})} />
  return <TextField {...shared} numeric={kind !== 'text'} {...(list === undefined ? {} : { list })} />
}
