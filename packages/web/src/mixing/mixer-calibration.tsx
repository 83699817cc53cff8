import { type DialCurve, dialCurve, say, sayNumber } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Thing } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { grown } from '../fields/rows.ts'
import { RowsTable } from '../fields/rows-table.tsx'
import { DialPlot } from './dial-plot.tsx'
import type { Measured } from './measured.ts'
import { type DialRow, readDialRows, settingsFrom, settingsOf } from './mixer-curve.ts'

const dialKeys = ['dial', 'measured'] as const
const leastRows = 3

/** Rows dial → strength become the mixer's settings. */
export function Calibration({ mixer, measured: { measure, scale } }: { mixer: Thing; measured: Measured }) {
  const [rows, setRows] = useState<readonly DialRow[]>(grown<'dial' | 'measured'>([], dialKeys, leastRows))
  const writing = useWriting()
  const { checks, faults } = readDialRows(rows, measure, scale)
  const curve = new Set(checks.map(({ dial }) => dial)).size < 2 ? null : dialCurve(checks)
  const old = settingsOf(mixer)
  const unit = measure === 'brix' ? '°Brix' : '%'
  const begin = () => {
    const texts = old.map(([dial]) => ({ dial: String(dial), measured: '' }))
    setRows(grown(texts, dialKeys, leastRows))
  }
  const save = async () => {
    if (curve === null) return
    const changes = { settings: settingsFrom(curve) }
    const was = old.length === 0 ? { settings: null } : { settings: old }
    const entry = setupEntry({ kind: 'mixer', id: mixer.id }, changes, was, stampNow())
    const isOnItsWay = await writing.write([{ entry, label: say('{mixer}: new settings', { mixer: mixer.name }) }])
    if (isOnItsWay) setRows(grown<'dial' | 'measured'>([], dialKeys, leastRows))
  }
  return (
    <section aria-label={say('Calibrate the mixer')}>
      <h2>{say('Calibrate it anew')}</h2>
      <p class="intro">
        {say(
          'Set the dial, let it run until the hose holds the new mix, measure, next setting. Measuring a setting twice says how much it scatters.',
        )}
      </p>
      <div class="tool">
        <div class="tool-fields">
          <RowsTable
            one={say('Setting')}
            caption={say('Settings and what they pour')}
            columns={[
              { key: 'dial', label: say('dial') },
              { key: 'measured', label: say('pours, {unit}', { unit }) },
            ]}
            rows={rows}
            faults={faults}
            least={leastRows}
            change={(next) => {
              setRows(next)
              writing.hush()
            }}
          />
          {old.length > 0 && checks.length === 0 && (
            <div>
              <button type="button" class="plain" onClick={begin}>
                {say('Begin with the dials of the book')}
              </button>
            </div>
          )}
        </div>
        <section class="answer" aria-label={say('New settings')}>
          {curve === null ? (
            <p role="status">{writing.said === '' ? say('It takes two settings of the dial.') : writing.said}</p>
          ) : (
            <>
              <p role="status">{sayCurve(curve, checks.length)}</p>
              <DialPlot curve={curve} checks={checks} old={old} says={say('The new settings, and each measurement.')} />
              <div class="buttons">
                <button type="button" class="main" disabled={writing.isBusy} onClick={() => void save()}>
                  {say('Save as {mixer}’s settings', { mixer: mixer.name })}
                </button>
              </div>
            </>
          )}
        </section>
      </div>
    </section>
  )
}

function sayCurve({ points, direction, scatterSd }: DialCurve, n: number): string {
  const percents = points.map(([, percent]) => percent)
  const settings = say(
    '{count} measurements at {settings} settings: {low} to {high} %, {direction, select, rising {rising} other {falling}} with the dial.',
    {
      count: n,
      settings: points.length,
      low: sayNumber(Math.min(...percents), 1),
      high: sayNumber(Math.max(...percents), 1),
      direction,
    },
  )
  const scatter =
    scatterSd === null
      ? say('No setting was measured twice: how much it scatters is not known.')
      : say('A measurement scatters by {percent} % about it.', { percent: sayNumber(scatterSd, 2) })
  return `${settings} ${scatter}`
}
