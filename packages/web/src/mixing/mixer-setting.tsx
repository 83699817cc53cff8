import { type DialCurve, dialFor, say, sayNumber, strengthAtDial } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { TextField } from '../fields/fields.tsx'
import { readPercent, readPlain } from '../fields/read.ts'
import { Said } from '../say/said.tsx'
import { DialPlot } from './dial-plot.tsx'

/** The setting for a strength, and the strength at a setting. */
export function SettingFor({ curve, name }: { curve: DialCurve | null; name: string }) {
  const [target, setTarget] = useState('')
  const [dial, setDial] = useState('')
  if (curve === null) {
    return (
      <section aria-label={say('Setting for a strength')}>
        <h2>{name}</h2>
        <p>{say('The book has no settings of it yet: calibrate it below.')}</p>
      </section>
    )
  }
  const wanted = readPercent(target)
  const at = readPlain(dial)
  return (
    <section aria-label={say('Setting for a strength')}>
      <h2>{name}</h2>
      <div class="figures">
        <TextField
          numeric
          label={say('Strength wanted, %')}
          value={target}
          onInput={setTarget}
          fault={'fault' in wanted ? wanted.fault : null}
        />
        <TextField
          numeric
          label={say('Or: the dial stands at')}
          value={dial}
          onInput={setDial}
          fault={'fault' in at ? at.fault : null}
        />
      </div>
      <p role="status">
        {!('fault' in wanted) && wanted.value !== null && <SettingWords curve={curve} target={wanted.value} />}{' '}
        {!('fault' in at) && at.value !== null && sayStrengthAt(curve, at.value)}
      </p>
      <DialPlot curve={curve} says={say('{mixer}: strength at each setting of its dial.', { mixer: name })} />
    </section>
  )
}

function SettingWords({ curve, target }: { curve: DialCurve; target: number }) {
  const setting = dialFor(curve, target)
  return setting.outcome === 'setting' ? (
    <Said
      text="For {percent} % set the dial to <strong>{dial}</strong>."
      values={{ percent: sayNumber(target, 1), dial: sayNumber(setting.dial, 2, {}, 0) }}
      parts={{ strong: (inside) => <strong class="amount">{inside}</strong> }}
    />
  ) : (
    say('{percent} % is out of its reach: it pours {low} to {high} %.', {
      percent: sayNumber(target, 1),
      low: sayNumber(setting.low, 1),
      high: sayNumber(setting.high, 1),
    })
  )
}

function sayStrengthAt(curve: DialCurve, dial: number): string {
  const found = strengthAtDial(curve, dial)
  const at = sayNumber(dial, 2, {}, 0)
  if (found.outcome === 'strength') {
    return say('At {dial} it pours {percent} %.', { dial: at, percent: sayNumber(found.percent, 1) })
  }
  return say('It was checked from {low} to {high}; nothing is known of {dial}.', {
    low: sayNumber(found.low, 2, {}, 0),
    high: sayNumber(found.high, 2, {}, 0),
    dial: at,
  })
}
