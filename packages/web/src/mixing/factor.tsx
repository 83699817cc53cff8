import { chartFromMixes, type KnownMix, type ProductFactor, say, sayNumber } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Book, Thing } from '../api/types.ts'
import { Plot } from '../drawing/plot.tsx'
import { axisOf } from '../drawing/scale.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { DayField, SelectField, TextField } from '../fields/fields.tsx'
import { readBrix } from '../fields/read.ts'
import { grown } from '../fields/rows.ts'
import { RowsTable } from '../fields/rows-table.tsx'
import { dayIn } from '../say/when.ts'
import { factorFrom, type MixRow, readMixes, residualsOf, withFactor } from './factor-mixes.ts'
import { factorsOf, scaleOf } from './measured.ts'

const mixKeys = ['percent', 'brix'] as const
const leastRows = 4

/** A fluid's factor from mixes of known strength: how sure, whether a straight line, and into the book from a day on. */
export function FactorTool({ book }: { book: Book }) {
  const [id, setId] = useState<string | null>(null)
  const [rows, setRows] = useState<readonly MixRow[]>(grown<'percent' | 'brix'>([], mixKeys, leastRows))
  const [water, setWater] = useState('0')
  const fluid = book.fluids.find((each) => each.id === id) ?? book.fluids[0]
  const waterRead = readBrix(water)
  const waterBrix = 'fault' in waterRead ? 0 : (waterRead.value ?? 0)
  const { mixes, faults } = readMixes(rows, waterBrix)
  // What the instrument shows on the water is taken off, so plain water lies at zero.
  const found = factorFrom(mixes, true)
  return (
    <>
      <p class="intro">
        {say(
          'Make up a few mixes with the shop’s own water, concentrate by mass or burette, and read each. A factor belongs to a product and drifts with its lots.',
        )}
      </p>
      <div class="tool">
        <div class="tool-fields">
          <div class="figures">
            <SelectField
              label={say('Fluid')}
              value={fluid?.id ?? ''}
              onInput={setId}
              choices={
                book.fluids.length === 0
                  ? [['', say('no fluid in the book')]]
                  : book.fluids.map(({ id, name }) => [id, name] as const)
              }
            />
            <TextField
              numeric
              label={say('Shown on the water alone, °Brix')}
              value={water}
              onInput={setWater}
              fault={'fault' in waterRead ? waterRead.fault : null}
            />
          </div>
          <RowsTable
            one={say('Mix')}
            caption={say('Known mixes')}
            columns={[
              { key: 'percent', label: say('made up to, %') },
              { key: 'brix', label: say('read, °Brix') },
            ]}
            rows={rows}
            faults={faults}
            least={leastRows}
            change={setRows}
          />
        </div>
        <section class="answer" aria-label={say('The factor')}>
          {found === null ? (
            <p role="status">
              {say('It takes one mix at least; four or more say whether the product is a straight line.')}
            </p>
          ) : found.outcome === 'no-slope' ? (
            <p role="status">
              {say('The readings do not rise with the strength beyond their scatter: no factor follows from them.')}
            </p>
          ) : (
            <FactorAnswer found={found} mixes={mixes} fluid={fluid} book={book} />
          )}
        </section>
      </div>
    </>
  )
}

type Found = Extract<ProductFactor, { outcome: 'factor' }>

function FactorAnswer({
  found,
  mixes,
  fluid,
  book,
}: {
  found: Found
  mixes: readonly KnownMix[]
  fluid: Thing | undefined
  book: Book
}) {
  return (
    <>
      <div role="status">
        <p class="headline">
          {found.low90 === null || found.high90 === null
            ? say('{factor} % per °Brix.', { factor: sayNumber(found.factor, 3) })
            : say('{factor} % per °Brix ({low}–{high}).', {
                factor: sayNumber(found.factor, 3),
                low: sayNumber(found.low90, 3),
                high: sayNumber(found.high90, 3),
              })}
        </p>
        <p>{sayLine(found)}</p>
        {found.zero?.off === true && (
          <p>
            {say(
              'The line through the mixes alone meets plain water at {brix} °Brix, not at 0: read the water with the same instrument and write that above.',
              { brix: sayNumber(found.zero.brix, 2) },
            )}
          </p>
        )}
      </div>
      <Residuals found={found} mixes={mixes} />
      {fluid !== undefined && <Save key={fluid.id} fluid={fluid} found={found} mixes={mixes} book={book} />}
    </>
  )
}

function sayLine({ n, residualSd, curvature }: Found): string {
  const scatter =
    residualSd === null
      ? say('One mix says nothing of the scatter.')
      : say('Readings scatter by {brix} °Brix.', { brix: sayNumber(residualSd, 2) })
  const shape =
    curvature === null
      ? say('Whether the product is a straight line, so few mixes cannot say.')
      : curvature.bent
        ? say(
            'The product is no straight line: it bends away by up to {percent} %. A chart serves it better than a factor.',
            { percent: sayNumber(curvature.farthest, 2) },
          )
        : say('No bend beyond the scatter: a straight line serves.')
  const count = say('{count, plural, one {One mix} other {# mixes}}.', { count: n })
  return `${count} ${scatter} ${shape}`
}

/** How far each reading lies off the line. */
function Residuals({ found, mixes }: { found: Found; mixes: readonly KnownMix[] }) {
  const misses = residualsOf(mixes, found)
  const reach = Math.max(0.1, ...misses.map(({ residual }) => Math.abs(residual)))
  const x = axisOf([0, ...misses.map(({ percent }) => percent)], { most: 6, zero: true })
  const y = axisOf([-reach, reach], { most: 4 })
  const says = say('How far each reading lies off the line: {readings} °Brix.', {
    readings: misses
      .map(({ percent, residual }) => `${sayNumber(percent, 1, {}, 0)} %: ${sayNumber(residual, 2)}`)
      .join('; '),
  })
  return (
    <Plot x={x} y={y} height={150} words={say('°Brix off the line, by % made up')} says={says}>
      {(places) => (
        <>
          <path class="curve" d={`M${places.left} ${places.y(0)}H${places.right}`} />
          <path
            class="miss"
            d={misses
              .map(({ percent, residual }) => `M${places.x(percent)} ${places.y(0)}V${places.y(residual)}`)
              .join('')}
          />
          {misses.map(({ percent, residual }) => (
            <circle class="mark" cx={places.x(percent)} cy={places.y(residual)} r={4} />
          ))}
        </>
      )}
    </Plot>
  )
}

interface SaveProps {
  fluid: Thing
  found: Found
  mixes: readonly KnownMix[]
  book: Book
}

/** Into the book from a day on; what was read before keeps its factor. */
function Save({ fluid, found, mixes, book }: SaveProps) {
  const today = dayIn(new Date().toISOString(), book.shop.timeZone)
  const [day, setDay] = useState(today)
  const writing = useWriting()
  const isDay = /^\d{4}-\d\d-\d\d$/.test(day) && day <= today
  const about = { kind: 'fluid' as const, id: fluid.id }
  const hasChart = fluid.brixChart !== undefined
  const saveFactor = () => {
    const changes = { factors: withFactor(fluid, day, found.factor), ...(hasChart ? { brixChart: null } : {}) }
    const was = {
      factors: factorsOf(fluid).length === 0 ? null : factorsOf(fluid),
      ...(hasChart ? { brixChart: fluid.brixChart } : {}),
    }
    const entry = setupEntry(about, changes, was, stampNow(), day)
    void writing.write([
      { entry, label: say('{fluid}: factor {factor}', { fluid: fluid.name, factor: sayNumber(found.factor, 3) }) },
    ])
  }
  const saveChart = () => {
    const brixChart = chartFromMixes(mixes).map(([brix, percent]) => [
      Number(brix.toFixed(2)),
      Number(percent.toFixed(2)),
    ])
    const entry = setupEntry(about, { brixChart }, { brixChart: fluid.brixChart ?? null }, stampNow(), day)
    void writing.write([
      { entry, label: say('{fluid}: chart of {count} points', { fluid: fluid.name, count: brixChart.length }) },
    ])
  }
  const isBent = found.curvature?.bent === true
  return (
    <div class="save">
      <p>{sayPresent(fluid, found, today)}</p>
      <div class="figures">
        <DayField
          label={say('It holds from')}
          value={day}
          onInput={setDay}
          max={today}
          fault={isDay ? null : { found: day === '' ? say('nothing') : day, expected: say('a day up to today') }}
        />
      </div>
      <div class="buttons">
        {isBent && (
          <button type="button" class="main" disabled={!isDay || writing.isBusy} onClick={saveChart}>
            {say('Save as {fluid}’s chart', { fluid: fluid.name })}
          </button>
        )}
        <button type="button" class={isBent ? '' : 'main'} disabled={!isDay || writing.isBusy} onClick={saveFactor}>
          {say('Save as {fluid}’s factor', { fluid: fluid.name })}
        </button>
      </div>
      {hasChart && (
        <p class="quiet">
          {say('A factor saved takes the fluid’s chart away from that day on; a chart would win over it.')}
        </p>
      )}
      <p role="status">{writing.said}</p>
    </div>
  )
}

function sayPresent(fluid: Thing, { low90, high90 }: Found, today: string): string {
  const now = scaleOf(fluid, today)
  if (now === null) return say('The book has no factor of {fluid} yet.', { fluid: fluid.name })
  if ('chart' in now) {
    return say('The book reads {fluid} by a chart of {count} points.', { fluid: fluid.name, count: now.chart.length })
  }
  const blanks = { fluid: fluid.name, factor: sayNumber(now.factor, 3) }
  if (low90 === null || high90 === null) return say('The book reads {fluid} with {factor}.', blanks)
  const fits = now.factor >= low90 && now.factor <= high90
  return say(
    fits
      ? 'The book reads {fluid} with {factor}, which these mixes bear out.'
      : 'The book reads {fluid} with {factor}, which lies outside what these mixes say.',
    blanks,
  )
}
