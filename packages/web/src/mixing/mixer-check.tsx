import { type DialCurve, dialDrift, say, sayNumber } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { useMeasurements } from '../api/queries.ts'
import type { Book, Measurement, Thing } from '../api/types.ts'
import { measurementEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { TextField } from '../fields/fields.tsx'
import { readBrix, readPlain, withUnit } from '../fields/read.ts'
import { sayDay } from '../say/when.ts'
import type { Measured } from './measured.ts'
import { percentOf, readMeasured, type Scale } from './measured.ts'
import { sayDrift } from './mixer-curve.ts'

/** One check against the settings, and those of the past. */
export function Check({
  mixer,
  curve,
  measured: { measure, scale },
  book,
  fluids,
}: {
  mixer: Thing
  curve: DialCurve | null
  measured: Measured
  book: Book
  fluids: readonly Thing[]
}) {
  const past = useMeasurements('mixer', mixer.id)
  const writing = useWriting()
  const [dial, setDial] = useState('')
  const [found, setFound] = useState('')
  const at = readPlain(dial)
  const pours = readMeasured(found, measure, scale)
  const check =
    'fault' in at || 'fault' in pours || at.value === null || pours.value === null
      ? null
      : { dial: at.value, percent: pours.value }
  const unit = measure === 'brix' ? '°Brix' : '%'
  const save = async () => {
    if (check === null) return
    const brix = measure === 'brix' ? readBrix(found) : null
    const values = {
      dial: check.dial,
      ...(brix !== null && 'value' in brix && brix.value !== null ? { brix: brix.value } : { strength: check.percent }),
    }
    const typed = { dial: dial.trim(), [measure === 'brix' ? 'brix' : 'strength']: withUnit(found, unit) }
    const entry = measurementEntry('check', { kind: 'mixer', id: mixer.id }, { values, typed }, stampNow())
    if (
      await writing.write([{ entry, label: say('{mixer}: check at {dial}', { mixer: mixer.name, dial: dial.trim() }) }])
    )
      setFound('')
  }
  const checks = (past.data ?? []).filter((entry) => entry.kind === 'check').toReversed()
  return (
    <section aria-label={say('Check the mixer')}>
      <h2>{say('Check it')}</h2>
      <div class="figures">
        <TextField
          numeric
          label={say('Dial set to')}
          value={dial}
          onInput={setDial}
          fault={'fault' in at ? at.fault : null}
        />
        <TextField
          numeric
          label={say('It pours, {unit}', { unit })}
          value={found}
          onInput={(text) => {
            setFound(text)
            writing.hush()
          }}
          fault={'fault' in pours ? pours.fault : null}
        />
      </div>
      <p role="status">
        {writing.said}
        {writing.said === '' && check !== null && (
          <>
            {measure === 'brix' && `${sayNumber(check.percent, 1)} %. `}
            {curve === null
              ? say('There are no settings to hold it against.')
              : sayDrift(dialDrift(curve, check), check)}
          </>
        )}
      </p>
      <div class="buttons">
        <button type="button" disabled={check === null || writing.isBusy} onClick={() => void save()}>
          {say('Write the check down')}
        </button>
      </div>
      <PastChecks checks={checks} curve={curve} book={book} fluids={fluids} scale={scale} />
    </section>
  )
}

const checksShown = 6

/** Earlier checks against today's settings. Those in °Brix are read with the fluid chosen above: the check does not name its own. */
function PastChecks({
  checks,
  curve,
  book,
  scale,
}: {
  checks: readonly Extract<Measurement, { kind: 'check' }>[]
  curve: DialCurve | null
  book: Book
  fluids: readonly Thing[]
  scale: Scale | null
}) {
  if (checks.length === 0) return <p class="quiet">{say('No check of it is in the book yet.')}</p>
  return (
    <>
      <h3>{say('Earlier checks')}</h3>
      <ul class="dated">
        {checks.slice(0, checksShown).map((check) => {
          const percent =
            check.strength ?? (check.brix === undefined || scale === null ? null : percentOf(check.brix, scale))
          const drift =
            curve === null || percent === null || check.dial === undefined
              ? null
              : sayDrift(dialDrift(curve, { dial: check.dial, percent }), { dial: check.dial, percent })
          return (
            <li key={check.id}>
              <span class="quiet">{sayDay(check.at, book.shop.timeZone, new Date().toISOString())}</span>{' '}
              {drift ?? (check.brix === undefined ? say('no strength measured') : `${sayNumber(check.brix, 1)} °Brix`)}
              {check.note !== undefined && <span class="quiet"> {say('“{note}”', { note: check.note })}</span>}
            </li>
          )
        })}
      </ul>
    </>
  )
}
