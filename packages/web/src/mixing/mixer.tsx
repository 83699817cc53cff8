import { type DialCurve, dialCurve, dialDrift, dialFor, sayNumber, strengthAtDial } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { useMeasurements } from '../api/queries.ts'
import type { Book, Measurement, Thing } from '../api/types.ts'
import { Plot } from '../drawing/plot.tsx'
import { axisOf } from '../drawing/scale.ts'
import { measurementEntry, setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { SelectField, Taps, TextField } from '../fields/fields.tsx'
import { readBrix, readPercent, readPlain, withUnit } from '../fields/read.ts'
import { grown } from '../fields/rows.ts'
import { RowsTable } from '../fields/rows-table.tsx'
import { dayIn, sayDay } from '../say/when.ts'
import { idFor } from '../shop/thing-fields.ts'
import { type Measure, percentOf, readMeasured, type Scale, scaleOn } from './measured.ts'
import { curveOf, type DialRow, readDialRows, type Setting, sayDrift, settingsFrom, settingsOf } from './mixer-curve.ts'

/** What the mixer pours at each setting: the setting for a target, a check against it, a calibration anew. */
export function MixerTool({ book }: { book: Book }) {
  const [id, setId] = useState<string | null>(null)
  const [fluid, setFluid] = useState<string | null>(null)
  const [measure, setMeasure] = useState<Measure>('brix')
  const mixer = book.mixers.find((each) => each.id === id) ?? book.mixers[0]
  const chosenFluid = book.fluids.find((each) => each.id === fluid) ?? book.fluids[0]
  const today = dayIn(new Date().toISOString(), book.shop.timeZone)
  const scale = scaleOn(chosenFluid, today)
  if (mixer === undefined) return <NewMixer book={book} />
  return (
    <>
      <p class="intro">
        A mixer drifts with water pressure, cold concentrate and wear: its settings hold as they were last checked.
      </p>
      <div class="figures">
        {book.mixers.length > 1 && (
          <SelectField
            label="Mixer"
            value={mixer.id}
            onInput={setId}
            choices={book.mixers.map(({ id, name }) => [id, name] as const)}
          />
        )}
        <Taps
          legend="What it pours is measured in"
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
            label="Fluid in the mix"
            value={chosenFluid?.id ?? ''}
            onInput={setFluid}
            choices={book.fluids.map(({ id, name }) => [id, name] as const)}
            fault={
              scale === null ? 'This fluid has no factor in the book: measure in %, or find its factor first.' : null
            }
          />
        )}
      </div>
      <MixerParts key={mixer.id} mixer={mixer} book={book} measured={{ measure, scale }} fluids={book.fluids} />
    </>
  )
}

interface Measured {
  measure: Measure
  scale: Scale | null
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

/** The setting for a strength, and the strength at a setting. */
function SettingFor({ curve, name }: { curve: DialCurve | null; name: string }) {
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

/** One check against the settings, and those of the past. */
function Check({
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
    if (await writing.write([{ entry, label: `${mixer.name}: check at ${dial.trim()}` }])) setFound('')
  }
  const checks = (past.data ?? []).filter((entry) => entry.kind === 'check').toReversed()
  return (
    <section aria-label="Check the mixer">
      <h2>Check it</h2>
      <div class="figures">
        <TextField numeric label="Dial set to" value={dial} onInput={setDial} fault={'fault' in at ? at.fault : null} />
        <TextField
          numeric
          label={`It pours, ${unit}`}
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
            {measure === 'brix' && <>{sayNumber(check.percent, 1)} %. </>}
            {curve === null ? 'There are no settings to hold it against.' : sayDrift(dialDrift(curve, check), check)}
          </>
        )}
      </p>
      <div class="buttons">
        <button type="button" disabled={check === null || writing.isBusy} onClick={() => void save()}>
          Write the check down
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
  if (checks.length === 0) return <p class="quiet">No check of it is in the book yet.</p>
  return (
    <>
      <h3>Earlier checks</h3>
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
              {drift ?? (check.brix === undefined ? 'no strength measured' : `${sayNumber(check.brix, 1)} °Brix`)}
              {check.note !== undefined && <span class="quiet"> “{check.note}”</span>}
            </li>
          )
        })}
      </ul>
    </>
  )
}

const dialKeys = ['dial', 'measured'] as const
const leastRows = 3

/** Rows dial → strength become the mixer's settings. */
function Calibration({ mixer, measured: { measure, scale } }: { mixer: Thing; measured: Measured }) {
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
    const isOnItsWay = await writing.write([{ entry, label: `${mixer.name}: new settings` }])
    if (isOnItsWay) setRows(grown<'dial' | 'measured'>([], dialKeys, leastRows))
  }
  return (
    <section aria-label="Calibrate the mixer">
      <h2>Calibrate it anew</h2>
      <p class="intro">
        Set the dial, let it run until the hose holds the new mix, measure, next setting. Measuring a setting twice says
        how much it scatters.
      </p>
      <div class="tool">
        <div class="tool-fields">
          <RowsTable
            one="Setting"
            caption="Settings and what they pour"
            columns={[
              { key: 'dial', label: 'dial' },
              { key: 'measured', label: `pours, ${unit}` },
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
                Begin with the dials of the book
              </button>
            </div>
          )}
        </div>
        <section class="answer" aria-label="New settings">
          {curve === null ? (
            <p role="status">{writing.said === '' ? 'It takes two settings of the dial.' : writing.said}</p>
          ) : (
            <>
              <p role="status">{sayCurve(curve, checks.length)}</p>
              <DialPlot curve={curve} checks={checks} old={old} says="The new settings, and each measurement." />
              <div class="buttons">
                <button type="button" class="main" disabled={writing.isBusy} onClick={() => void save()}>
                  Save as {mixer.name}’s settings
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
  const reach = `${sayNumber(Math.min(...percents), 1)} to ${sayNumber(Math.max(...percents), 1)} %`
  const scatter =
    scatterSd === null
      ? 'No setting was measured twice: how much it scatters is not known.'
      : `A measurement scatters by ${sayNumber(scatterSd, 2)} % about it.`
  return `${n} measurements at ${points.length} settings: ${reach}, ${direction} with the dial. ${scatter}`
}

function DialPlot({
  curve,
  checks = [],
  old = [],
  says,
}: {
  curve: DialCurve
  checks?: readonly { dial: number; percent: number }[]
  old?: readonly Setting[]
  says: string
}) {
  const all: Setting[] = [...curve.points, ...old, ...checks.map(({ dial, percent }): Setting => [dial, percent])]
  const x = axisOf(
    all.map(([dial]) => dial),
    { most: 8 },
  )
  const y = axisOf(
    all.map(([, percent]) => percent),
    { most: 4, zero: true },
  )
  const marks = checks.length > 0 ? checks : curve.points.map(([dial, percent]) => ({ dial, percent }))
  return (
    <Plot x={x} y={y} height={190} words="% poured, by the dial" says={says}>
      {(places) => {
        const line = (points: readonly Setting[]) =>
          `M${points.map(([dial, percent]) => `${places.x(dial)} ${places.y(percent)}`).join('L')}`
        return (
          <>
            {old.length > 1 && <path class="dashed" d={line(old.toSorted((a, b) => a[0] - b[0]))} />}
            <path class="curve" d={line(curve.points)} />
            {marks.map(({ dial, percent }) => (
              <circle class="mark" cx={places.x(dial)} cy={places.y(percent)} r={4} />
            ))}
          </>
        )
      }}
    </Plot>
  )
}

/** The first mixer of a book: a name, then its calibration. */
function NewMixer({ book }: { book: Book }) {
  const [name, setName] = useState('')
  const writing = useWriting()
  const add = () => {
    const id = idFor(name, new Set(book.mixers.map(({ id }) => id)), 'mixer')
    const entry = setupEntry({ kind: 'mixer', id }, { name: name.trim() }, null, stampNow())
    void writing.write([{ entry, label: `mixer ${name.trim()}` }])
  }
  return (
    <form
      class="tool-fields narrow"
      aria-label="Add a mixer"
      onSubmit={(event) => {
        event.preventDefault()
        if (name.trim() !== '') add()
      }}
    >
      <p class="intro">
        The book knows no mixer yet. With one, its dial’s settings become strengths, and recipes stay inside its reach.
      </p>
      <TextField label="Name of the mixer" value={name} onInput={setName} />
      <div class="buttons">
        <button type="submit" class="main" disabled={name.trim() === '' || writing.isBusy}>
          Add it
        </button>
      </div>
      <p role="status">{writing.said}</p>
    </form>
  )
}
