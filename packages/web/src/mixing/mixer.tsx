import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Book, Thing } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { SelectField, Taps, TextField } from '../fields/fields.tsx'
import { dayIn } from '../say/when.ts'
import { idFor } from '../shop/id-for.ts'
import { type Measure, type Measured, scaleOf } from './measured.ts'
import { Calibration } from './mixer-calibration.tsx'
import { Check } from './mixer-check.tsx'
import { curveOf, settingsOf } from './mixer-curve.ts'
import { SettingFor } from './mixer-setting.tsx'

/** What the mixer pours at each setting: the setting for a target, a check against it, a calibration anew. */
export function MixerTool({ book }: { book: Book }) {
  const [id, setId] = useState<string | null>(null)
  const [fluid, setFluid] = useState<string | null>(null)
  const [measure, setMeasure] = useState<Measure>('brix')
  const mixer = book.mixers.find((each) => each.id === id) ?? book.mixers[0]
  const chosenFluid = book.fluids.find((each) => each.id === fluid) ?? book.fluids[0]
  const today = dayIn(new Date().toISOString(), book.shop.timeZone)
  const scale = scaleOf(chosenFluid, today)
  if (mixer === undefined) return <NewMixer book={book} />
  return (
    <>
      <p class="intro">
        {say(
          'A mixer drifts with water pressure, cold concentrate and wear: its settings hold as they were last checked.',
        )}
      </p>
      <div class="figures">
        {book.mixers.length > 1 && (
          <SelectField
            label={say('Mixer')}
            value={mixer.id}
            onInput={setId}
            choices={book.mixers.map(({ id, name }) => [id, name] as const)}
          />
        )}
        <Taps
          legend={say('What it pours is measured in')}
          name="mixer-measure"
          value={measure}
          choices={[
            ['brix', '°Brix'],
            ['percent', '%'],
          ]}
          onPick={(value) => setMeasure(value as Measure)}
        />
        {measure === 'brix' && (
          <SelectField
            label={say('Fluid in the mix')}
            value={chosenFluid?.id ?? ''}
            onInput={setFluid}
            choices={book.fluids.map(({ id, name }) => [id, name] as const)}
            fault={
              scale === null
                ? say('This fluid has no factor in the book: measure in %, or find its factor first.')
                : null
            }
          />
        )}
      </div>
      <MixerParts key={mixer.id} mixer={mixer} book={book} measured={{ measure, scale }} fluids={book.fluids} />
    </>
  )
}

function MixerParts({
  mixer,
  book,
  measured,
  fluids,
}: {
  mixer: Thing
  book: Book
  measured: Measured
  fluids: readonly Thing[]
}) {
  const curve = curveOf(settingsOf(mixer))
  return (
    <>
      <div class="part two-sides">
        <SettingFor curve={curve} name={mixer.name} />
        <Check mixer={mixer} curve={curve} measured={measured} book={book} fluids={fluids} />
      </div>
      <div class="part">
        <Calibration mixer={mixer} measured={measured} />
      </div>
    </>
  )
}

/** The first mixer of a book: a name, then its calibration. */
function NewMixer({ book }: { book: Book }) {
  const [name, setName] = useState('')
  const writing = useWriting()
  const add = () => {
    const id = idFor(name, new Set(book.mixers.map(({ id }) => id)), 'mixer')
    const entry = setupEntry({ kind: 'mixer', id }, { name: name.trim() }, null, stampNow())
    void writing.write([{ entry, label: say('mixer {name}', { name: name.trim() }) }])
  }
  return (
    <form
      class="tool-fields narrow"
      aria-label={say('Add a mixer')}
      onSubmit={(event) => {
        event.preventDefault()
        if (name.trim() !== '') add()
      }}
    >
      <p class="intro">
        {say(
          'The book knows no mixer yet. With one, its dial’s settings become strengths, and recipes stay inside its reach.',
        )}
      </p>
      <TextField label={say('Name of the mixer')} value={name} onInput={setName} />
      <div class="buttons">
        <button type="submit" class="main" disabled={name.trim() === '' || writing.isBusy}>
          {say('Add it')}
        </button>
      </div>
      <p role="status">{writing.said}</p>
    </form>
  )
}
