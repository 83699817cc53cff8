import { message, say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Entry } from '../api/types.ts'
import { stampNow } from '../entry/this-device.ts'
import { TextField } from '../fields/fields.tsx'
import type { Fault } from '../fields/read.ts'
import { type Read, readClass } from './read-class.ts'
import { lookedEntry, type SampleWay, sampleEntry, testReading } from './test-entries.ts'

const fields = [
  { key: 'ph', label: message('pH'), unit: '', ends: { min: 0, max: 14 } },
  { key: 'nitrite', label: message('Nitrite, mg/L'), unit: ' mg/L', ends: { min: 0, max: 1000 } },
  { key: 'hardness', label: message('Hardness, ppm'), unit: ' ppm', ends: { min: 0, max: 10_000 } },
] as const

const ways: readonly (readonly [SampleWay, string])[] = [
  ['dip slide', message('Slide dipped')],
  ['laboratory', message('Sample for the laboratory')],
]

/** What was tested of one sump: typed from strips or a meter, or a sample whose result comes later. */
export function TestForm({
  sump,
  isBusy,
  write,
}: {
  sump: string
  isBusy: boolean
  write(entries: Entry[]): Promise<boolean>
}) {
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>({})
  const [faults, setFaults] = useState<Readonly<Record<string, Fault>>>({})
  const submit = async () => {
    const read = readTests(texts)
    setFaults(read.faults)
    if (Object.keys(read.faults).length > 0 || Object.keys(read.found).length === 0) return
    if (await write([testReading(sump, read.found, read.typed, stampNow())])) setTexts({})
  }
  return (
    <form
      class="test-form"
      aria-label={say('Write a test down')}
      onSubmit={(event) => {
        event.preventDefault()
        void submit()
      }}
    >
      <div class="test-fields">
        {fields.map(({ key, label }) => (
          <TextField
            key={key}
            label={say(label)}
            value={texts[key] ?? ''}
            numeric={key === 'ph'}
            fault={faults[key] ?? null}
            onInput={(text) => setTexts({ ...texts, [key]: text })}
          />
        ))}
      </div>
      <p class="quiet">{say('A strip’s class as well: <10, 10-25, 80+.')}</p>
      <div class="buttons">
        <button
          type="submit"
          class="main"
          disabled={isBusy || Object.values(texts).every((text) => text.trim() === '')}
        >
          {say('Write it down')}
        </button>
        <button type="button" disabled={isBusy} onClick={() => void write([lookedEntry(sump, stampNow())])}>
          {say('Looked, smelt, all fine')}
        </button>
        {ways.map(([way, words]) => (
          <button
            key={way}
            type="button"
            disabled={isBusy}
            onClick={() => void write([sampleEntry(sump, way, stampNow())])}
          >
            {say(words)}
          </button>
        ))}
      </div>
    </form>
  )
}

function readTests(texts: Readonly<Record<string, string>>) {
  const faults: Record<string, Fault> = {}
  const found: Record<string, Read> = {}
  const typed: Record<string, string> = {}
  for (const { key, unit, ends } of fields) {
    const text = (texts[key] ?? '').trim()
    const read = readClass(text, ends)
    if ('fault' in read) faults[key] = read.fault
    else if (read.value !== null) {
      found[key] = read.value
      typed[key] = `${text}${unit}`
    }
  }
  return { faults, found, typed }
}
