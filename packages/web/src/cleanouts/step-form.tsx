import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Units } from '../api/types.ts'
import { FaultWords, SelectField, Taps, TextField } from '../fields/fields.tsx'
import { readBrix, readLitres, readPh } from '../fields/read.ts'
import { readTexts } from '../fields/read-texts.ts'
import { shopUnits } from '../say/units.ts'
import { sayPicture, slidePictures } from '../tests/slide-pictures.ts'
import type { JobStep } from './asks.ts'
import { noFigures, type StepFigures } from './step-entries.ts'

interface StepFormProps {
  step: JobStep
  units: Units
  isBusy: boolean
  sign(figures: StepFigures): void
}

const readers = (units: Units) => ({
  freshPh: readPh,
  rinsePh: readPh,
  ph: readPh,
  brix: (text: string) => readBrix(text),
  oil: (text: string) => readLitres(text, units),
})
type FigureKey = keyof ReturnType<typeof readers>

/** What is asked at a step, and one wide key to sign it with gloves on. */
export function StepForm({ step, units, isBusy, sign }: StepFormProps) {
  const [texts, setTexts] = useState<Record<FigureKey, string>>({ freshPh: '', rinsePh: '', ph: '', brix: '', oil: '' })
  const [look, setLook] = useState<string | null>(null)
  const [smell, setSmell] = useState<string | null>(null)
  const [slide, setSlide] = useState('')
  const [lot, setLot] = useState('')
  const [note, setNote] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const { values, faults } = readTexts(texts, readers(units))
  const { asks } = step
  const isLook = /^rinse-check/.test(step.id)
  const figures: Record<FigureKey, string> = {
    freshPh: say('pH of the weak fluid as poured'),
    rinsePh: say('pH at the drain'),
    ph: 'pH',
    brix: '°Brix',
    oil: say('Oil taken off, {unit}', { unit: say(shopUnits[units].volumeName) }),
  }
  const missing = () => {
    if (isLook && (values.freshPh === null || values.rinsePh === null || look === null || smell === null)) {
      return say('A rinse is accepted on its pH, look and smell: all four are asked.')
    }
    if (step.id === 'later-slide' && slide === '')
      return say('The sheet stays open until the slide is read: which class is it?')
    return null
  }
  const submit = (event: Event) => {
    event.preventDefault()
    const found = Object.keys(faults).length > 0 ? say('A figure does not fit; its field says why.') : missing()
    setFault(found)
    if (found !== null) return
    const bacteria = slide === '' ? null : slidePictures[Number(slide)]!.value
    sign({ ...noFigures, ...values, look, smell, bacteria, lot: lot.trim(), note: note.trim() })
  }
  return (
    <form class="step-form" onSubmit={submit} aria-label={say('Sign: {step}', { step: step.title })}>
      {(Object.keys(figures) as FigureKey[])
        .filter((key) => asks.includes(key))
        .map((key) => (
          <TextField
            key={key}
            numeric
            label={figures[key]}
            value={texts[key]}
            onInput={(text) => setTexts({ ...texts, [key]: text })}
            fault={faults[key] ?? null}
          />
        ))}
      {asks.includes('look') && (
        <Taps
          legend={isLook ? say('How it comes out') : say('Look')}
          name={`look-${step.id}`}
          value={look}
          choices={[
            ['clear', say('Clear')],
            ['dirty', say('Dirty')],
          ]}
          onPick={setLook}
        />
      )}
      {asks.includes('smell') && (
        <Taps
          legend={say('Smell')}
          name={`smell-${step.id}`}
          value={smell}
          choices={[
            ['none', say('No smell')],
            ['smells', say('It smells')],
          ]}
          onPick={setSmell}
        />
      )}
      {asks.includes('bacteria') && (
        <SelectField
          label={say('The slide looks most like, CFU/mL')}
          value={slide}
          onInput={setSlide}
          choices={[
            ['', say('Not read')] as const,
            ...slidePictures.map(({ power, value }, i) => [String(i), `${say(power)}: ${sayPicture(value)}`] as const),
          ]}
        />
      )}
      {asks.includes('lot') && <TextField label={say('Lot of the concentrate')} value={lot} onInput={setLot} />}
      <details class="step-note">
        <summary>{say('A note')}</summary>
        <TextField label={say('What the next one should know')} value={note} onInput={setNote} />
      </details>
      {fault !== null && <FaultWords fault={fault} />}
      {step.signs === 'keeper' && <p class="quiet">{say('A keeper signs this one.')}</p>}
      <button type="submit" class="main sign" disabled={isBusy}>
        {say('Done, sign it')}
      </button>
    </form>
  )
}
