import { message, type ShutdownKind, say, sayCautions, sayShutdownStep, shutdownSheet } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link, useLocation } from 'wouter-preact'
import { useSumps } from '../api/queries.ts'
import type { Book } from '../api/types.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { DayField, SelectField, Taps } from '../fields/fields.tsx'
import { Said } from '../say/said.tsx'
import { PlannedSteps } from './planned-steps.tsx'
import { openingEntry } from './step-entries.ts'

const kinds: readonly (readonly [ShutdownKind, string])[] = [
  ['weekend', message('Weekend')],
  ['holidays', message('Holidays')],
  ['mothballed', message('Out of use')],
  ['restart', message('Back into use')],
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
  const steps = shutdownSheet(kind).map((step) => ({
    ...step,
    ...sayShutdownStep(step),
    cautions: sayCautions(step.cautions),
    hours: 0,
  }))
  const open = async () => {
    if (isTurned) return
    const values = { ...(from === '' ? {} : { from }), ...(to === '' ? {} : { to }) }
    const subject = sump === '' ? { about: { kind: 'shop' } } : { sump }
    const opening = { kind: 'signoff', ...subject, step: 'opened', sheet: kind, values: hasDays ? values : {} }
    const entry = openingEntry(opening, stampNow())
    const title = say(kinds.find(([one]) => one === kind)![1])
    if (await writing.write([{ entry, label: title }])) go(`/cleanouts/sheet/${entry.id}`)
  }
  return (
    <>
      <p class="intro">
        <Said
          text="Still fluid under an oil layer is where growth begins. For another fluid in a sump, <plan>plan a cleanout</plan> and name the fluid that comes in: the sheet then says whether the two may meet."
          parts={{ plan: (inside) => <Link href="/cleanouts/plan">{inside}</Link> }}
        />
      </p>
      <div class="tool-fields narrow">
        <Taps
          legend={say('What comes')}
          name="standstill"
          value={kind}
          choices={kinds.map(([one, words]) => [one, say(words)] as const)}
          onPick={(value) => setKind(value as ShutdownKind)}
        />
        <SelectField
          label={say('Where')}
          value={sump}
          onInput={setSump}
          choices={[['', say('The whole shop')] as const, ...sumps.map((one) => [one.sump, one.name] as const)]}
        />
        {hasDays && (
          <>
            <DayField label={say('From')} value={from} onInput={setFrom} />
            <DayField
              label={say('Until, that day included')}
              value={to}
              onInput={setTo}
              fault={isTurned ? say('Found a day before the first; expected one not before it.') : null}
            />
          </>
        )}
        <div class="buttons">
          <button type="button" class="main" disabled={writing.isBusy} onClick={() => void open()}>
            {say('Open the sheet')}
          </button>
        </div>
        {writing.said !== '' && (
          <p class="note" role="status">
            {writing.said}
          </p>
        )}
      </div>
      <section class="part" aria-label={say('The steps')}>
        <h2>{say('The steps')}</h2>
        <PlannedSteps steps={steps} />
      </section>
    </>
  )
}
