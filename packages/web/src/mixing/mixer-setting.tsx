import { type DialCurve, dialFor, sayNumber, strengthAtDial } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { TextField } from '../fields/fields.tsx'
import { readPercent, readPlain } from '../fields/read.ts'
import { DialPlot } from './dial-plot.tsx'

/** The setting for a strength, and the strength at a setting. */
export function SettingFor({ curve, name }: { curve: DialCurve | null; name: string }) {
  const [target, setTarget] = useState('')
  const [dial, setDial] = useState('')
  if (curve === null) {
    return (
      <section aria-label="Setting for a strength">
        <h2>{name}</h2>
        <p>The book has no settings of it yet: calibrate it below.</p>
      </section>
    )
  }
  const wanted = readPercent(target)
  const at = readPlain(dial)
  return (
    <section aria-label="Setting for a strength">
      <h2>{name}</h2>
      <div class="figures">
        <TextField
          numeric
          label="Strength wanted, %"
          value={target}
          onInput={setTarget}
          fault={'fault' in wanted ? wanted.fault : null}
        />
        <TextField
          numeric
          label="Or: the dial stands at"
          value={dial}
          onInput={setDial}
          fault={'fault' in at ? at.fault : null}
        />
      </div>
      <p role="status">
        {!('fault' in wanted) && wanted.value !== null && <SettingWords curve={curve} target={wanted.value} />}{' '}
        {!('fault' in at) && at.value !== null && sayStrengthAt(curve, at.value)}
      </p>
      <DialPlot curve={curve} says={`${name}: strength at each setting of its dial.`} />
    </section>
  )
}

function SettingWords({ curve, target }: { curve: DialCurve; target: number }) {
  const setting = dialFor(curve, target)
  return setting.outcome === 'setting' ? (
    <>
      For {sayNumber(target, 1)} % set the dial to <strong class="amount">{sayNumber(setting.dial, 2, {}, 0)}</strong>.
    </>
  ) : (
    <>
      {sayNumber(target, 1)} % is out of its reach: it pours {sayNumber(setting.low, 1)} to {sayNumber(setting.high, 1)}{' '}
      %.
    </>
  )
}

function sayStrengthAt(curve: DialCurve, dial: number): string {
  const found = strengthAtDial(curve, dial)
  const at = sayNumber(dial, 2, {}, 0)
  if (found.outcome === 'strength') return `At ${at} it pours ${sayNumber(found.percent, 1)} %.`
  return `It was checked from ${sayNumber(found.low, 2, {}, 0)} to ${sayNumber(found.high, 2, {}, 0)}; nothing is known of ${at}.`
}
