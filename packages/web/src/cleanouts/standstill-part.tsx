import { type ShutdownKind, sayCautions, shutdownSheet } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link, useLocation } from 'wouter-preact'
import { useSumps } from '../api/queries.ts'
import type { Book } from '../api/types.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { DayField, SelectField, Taps } from '../fields/fields.tsx'
import { PlannedSteps } from './planned-steps.tsx'
import { openingEntry } from './step-entries.ts'

const kinds: readonly (readonly [ShutdownKind, string])[] = [
  ['weekend', 'Weekend'],
  ['holidays', 'Holidays'],
  ['mothballed', 'Out of use'],
  ['restart', 'Back into use'],
]

/** Before a machine stands and before it runs again, and when another fluid comes in. */
export function StandstillPart({ book: _ }: { book: Book }) {
  const [, go] = useLocation()
  const sumps = useSumps().data ?? []
  const [kind, setKind] = useState<ShutdownKind>('weekend')
  const [sump, setSump] = useState('')
  const [from, setFrom] = useState('')
  const [to, setTo] = useState('')
  const writing = useWriting()
  const hasDays = kind === 'holidays' || kind === 'mothballed'
  const isTurned = from !== '' && to !== '' && to < from
  const steps = shutdownSheet(kind).map((step) => ({ ...step, cautions: sayCautions(step.cautions), hours: 0 }))
  const open = async () => {
    if (isTurned) return
    const values = { ...(from === '' ? {} : { from }), ...(to === '' ? {} : { to }) }
    const subject = sump === '' ? { about: { kind: 'shop' } } : { sump }
    const opening = { kind: 'signoff', ...subject, step: 'opened', sheet: kind, values: hasDays ? values : {} }
    const entry = openingEntry(opening, stampNow())
    const title = kinds.find(([one]) => one === kind)![1]
    if (await writing.write([{ entry, label: title }])) go(`/cleanouts/sheet/${entry.id}`)
  }
  return (
    <>
      <p class="intro">
        Still fluid under an oil layer is where growth begins. For another fluid in a sump,{' '}
        <Link href="/cleanouts/plan">plan a cleanout</Link> and name the fluid that comes in: the sheet then says
        whether the two may meet.
      </p>
      <div class="tool-fields narrow">
        <Taps
          legend="What comes"
          name="standstill"
          value={kind}
          choices={kinds}
          onPick={(value) => setKind(value as ShutdownKind)}
        />
        <SelectField
          label="Where"
          value={sump}
          onInput={setSump}
          choices={[['', 'The whole shop'] as const, ...sumps.map((one) => [one.sump, one.name] as const)]}
        />
        {hasDays && (
          <>
            <DayField label="From" value={from} onInput={setFrom} />
            <DayField
              label="Until, that day included"
              value={to}
              onInput={setTo}
              fault={isTurned ? 'Found a day before the first; expected one not before it.' : null}
            />
          </>
        )}
        <div class="buttons">
          <button type="button" class="main" disabled={writing.isBusy} onClick={() => void open()}>
            Open the sheet
          </button>
        </div>
        {writing.said !== '' && (
          <p class="note" role="status">
            {writing.said}
          </p>
        )}
      </div>
      <section class="part" aria-label="The steps">
        <h2>The steps</h2>
        <PlannedSteps steps={steps} />
      </section>
    </>
  )
}
