import { datesLocale, hardnessInAll, message, say, sayNumber } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { useMeasurements } from '../api/queries.ts'
import type { Book, Thing } from '../api/types.ts'
import { Plot } from '../drawing/plot.tsx'
import { axisOf } from '../drawing/scale.ts'
import { measurementEntry, setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { DayField, TextField } from '../fields/fields.tsx'
import { Figures } from '../fields/figures.tsx'
import { readHardness, withUnit } from '../fields/read.ts'
import { readTexts } from '../fields/read-texts.ts'
import { WideTable } from '../parts/wide-table.tsx'
import { dayIn, sayDay } from '../say/when.ts'
import '../today/line.css'
import {
  type Analysed,
  type Analysis,
  analysed,
  analysesIn,
  analysisReaders,
  driftOf,
  figureOfWater,
  instantOf,
  isYoungest,
  kindWords,
  presentAfter,
} from './analyses.ts'

/** The shop's waters, their analyses over time, and any hardness in every unit. */
export function Sources({ book }: { book: Book }) {
  return (
    <>
      <p class="intro">
        {say('A water is what its last analysis says: taps drift with the season, exchangers as they run out.')}
      </p>
      {book.waters.length === 0 && (
        <p>
          {say('The book knows no water yet.')} <Link href="/shop">{say('Add one under Shop')}</Link>
        </p>
      )}
      {book.waters.map((water) => (
        <Source key={water.id} water={water} book={book} />
      ))}
      <div class="part">
        <EveryUnit />
      </div>
    </>
  )
}

function Source({ water, book }: { water: Thing; book: Book }) {
  const answer = useMeasurements('water', water.id)
  const [isWriting, setWriting] = useState(false)
  const writing = useWriting()
  const analyses = analysesIn(answer.data ?? [])
  const last = analyses.at(-1)
  const kind = typeof water.kind === 'string' ? water.kind : ''
  return (
    <section class="source" aria-label={water.name}>
      <div class="source-head">
        <h2>{water.name}</h2>
        {kind !== '' && <span class="tag plain">{say(kindWords[kind] ?? kind)}</span>}
        {kind === 'softened' && <span class="tag do">{say('never a routine top-up')}</span>}
      </div>
      {kind === 'softened' && (
        <p class="intro">
          {say(
            'Its hardness is gone, the sodium that took its place and the chloride are not: they stay in the sump and build up.',
          )}
        </p>
      )}
      <div class="source-parts">
        <div>
          <Present water={water} />
          <p class="quiet">
            {last === undefined
              ? answer.error === null
                ? say('No analysis is in the book.')
                : answer.error.message
              : say('Last analysed {day}.', { day: sayDay(last.at, book.shop.timeZone, new Date().toISOString()) })}
          </p>
        </div>
        <HardnessOverTime analyses={analyses} name={water.name} timeZone={book.shop.timeZone} />
      </div>
      {analyses.length > 0 && <AllAnalyses analyses={analyses} timeZone={book.shop.timeZone} />}
      {isWriting ? (
        <AnalysisForm
          water={water}
          analyses={analyses}
          book={book}
          isBusy={writing.isBusy}
          write={async (items) => {
            if (await writing.write(items)) setWriting(false)
          }}
          cancel={() => setWriting(false)}
        />
      ) : (
        <button
          type="button"
          aria-label={say('Write an analysis of {water}', { water: water.name })}
          onClick={() => {
            setWriting(true)
            writing.hush()
          }}
        >
          {say('Write an analysis')}
        </button>
      )}
      <p role="status">{writing.said}</p>
    </section>
  )
}

/** What the book reckons with; hardness in the units people say it in. */
function Present({ water }: { water: Thing }) {
  const known = analysed.flatMap((field) => {
    const value = figureOfWater(water, field.key)
    return value === null ? [] : [{ ...field, value }]
  })
  if (known.length === 0) return <p>{say('Nothing is known of what it holds.')}</p>
  return (
    <dl class="pairs">
      {known.map(({ key, word, unit, decimals, value }) => (
        <>
          <dt>{say(word)}</dt>
          <dd>
            <strong>{`${sayNumber(value, decimals, {}, 0)} ${unit}`}</strong>
            {key === 'hardness' && <span class="quiet"> = {sayHardness(value)}</span>}
          </dd>
        </>
      ))}
    </dl>
  )
}

const sayHardness = (ppm: number): string => {
  const { dH, gpg, clark, fH } = hardnessInAll(ppm, 'ppm')
  return `${sayNumber(dH, 1)}\u00a0°dH · ${sayNumber(fH, 1)}\u00a0°fH · ${sayNumber(gpg, 1)}\u00a0gpg · ${sayNumber(clark, 1)}\u00a0°Clark`
}

/** Hardness over the analyses, once there are two. */
function HardnessOverTime({
  analyses,
  name,
  timeZone,
}: {
  analyses: readonly Analysis[]
  name: string
  timeZone: string
}) {
  const points = analyses.flatMap(({ at, hardness }) =>
    hardness === undefined ? [] : [{ at: Date.parse(at), hardness }],
  )
  const drift = driftOf(analyses, 'hardness')
  if (points.length < 2 || drift === null) return null
  const times = points.map(({ at }) => at)
  const [from, to] = [Math.min(...times), Math.max(...times)]
  const air = Math.max((to - from) * 0.04, 86_400_000)
  const x = { from: from - air, to: to + air, step: 1, ticks: [] }
  const y = axisOf(
    points.map(({ hardness }) => hardness),
    { most: 3, zero: true },
  )
  const dayFormat = new Intl.DateTimeFormat(datesLocale(), {
    timeZone,
    day: 'numeric',
    month: 'short',
    year: '2-digit',
  })
  const day = (at: number) => dayFormat.format(at)
  const says = say('{water}: {count} analyses, hardness from {low} to {high} ppm, the last {last}.', {
    water: name,
    count: drift.n,
    low: sayNumber(drift.low, 0),
    high: sayNumber(drift.high, 0),
    last: sayNumber(drift.last, 0),
  })
  return (
    <Plot
      x={x}
      y={y}
      height={140}
      words={say('hardness, ppm')}
      says={says}
      xTicks={[from, to].map((at) => ({ at, words: day(at) }))}
    >
      {(places) => (
        <>
          <path
            class="curve"
            d={`M${points.map(({ at, hardness }) => `${places.x(at)} ${places.y(hardness)}`).join('L')}`}
          />
          {points.map(({ at, hardness }) => (
            <circle class="mark" cx={places.x(at)} cy={places.y(hardness)} r={4}>
              <title>
                {day(at)}: {sayNumber(hardness, 0)} ppm
              </title>
            </circle>
          ))}
        </>
      )}
    </Plot>
  )
}

function AllAnalyses({ analyses, timeZone }: { analyses: readonly Analysis[]; timeZone: string }) {
  const shown = analysed.filter(({ key }) => analyses.some((analysis) => analysis[key] !== undefined))
  return (
    <details>
      <summary>{say('{count, plural, one {Its analysis} other {All # analyses}}', { count: analyses.length })}</summary>
      <WideTable of={say('Analyses')}>
        <table>
          <thead>
            <tr>
              <th>{say('Day')}</th>
              {shown.map(({ word, unit }) => (
                <th class="figure">
                  {say(word)}
                  {unit === '' ? '' : `, ${unit}`}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {analyses.toReversed().map((analysis) => (
              <tr key={analysis.id}>
                <td>{sayDay(analysis.at, timeZone, new Date().toISOString())}</td>
                {shown.map(({ key, decimals }) => (
                  <td class="figure">
                    {analysis[key] === undefined ? '–' : sayNumber(analysis[key], decimals, {}, 0)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </WideTable>
    </details>
  )
}

const emptyAnalysis = Object.fromEntries(analysed.map(({ key }) => [key, ''])) as Record<Analysed, string>

interface AnalysisFormProps {
  water: Thing
  analyses: readonly Analysis[]
  book: Book
  isBusy: boolean
  write(items: { entry: ReturnType<typeof measurementEntry>; label: string }[]): Promise<void>
  cancel(): void
}

/** What was measured goes into the journal; what the book reckons with follows it where it is the youngest. */
function AnalysisForm({ water, analyses, book, isBusy, write, cancel }: AnalysisFormProps) {
  const now = stampNow().at
  const today = dayIn(now, book.shop.timeZone)
  const [day, setDay] = useState(today)
  const [texts, setTexts] = useState(emptyAnalysis)
  const [isPresent, setPresent] = useState(true)
  const [isTried, setTried] = useState(false)
  const { values, faults } = readTexts(texts, analysisReaders)
  const measured = Object.fromEntries(
    Object.entries(values).filter((pair): pair is [string, number] => pair[1] !== null),
  )
  const isDay = /^\d{4}-\d\d-\d\d$/.test(day) && day <= today
  const isEmpty = Object.keys(measured).length === 0
  const at = isDay ? instantOf(day, today, now) : now
  const isLast = isYoungest(at, analyses)
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if (!isDay || isEmpty || Object.keys(faults).length > 0) return
    const stamp = { ...stampNow(), at }
    const about = { kind: 'water' as const, id: water.id }
    const typed = Object.fromEntries(
      analysed
        .filter(({ key }) => texts[key].trim() !== '')
        .map(({ key, unit }) => [key, unit === '' ? texts[key].trim() : withUnit(texts[key], unit)]),
    )
    const entry = measurementEntry('analysis', about, { values: measured, typed }, stamp)
    const present = isPresent && isLast ? presentAfter(water, measured) : null
    const items = [{ entry, label: say('{water}: analysis', { water: water.name }) }]
    if (present !== null) {
      items.push({
        entry: setupEntry(about, present.changes, present.was, stamp),
        label: say('{water}: reckoned with from now on', { water: water.name }),
      })
    }
    void write(items)
  }
  return (
    <form
      class="pour-form analysis"
      aria-label={say('Analysis of {water}', { water: water.name })}
      noValidate
      onSubmit={submit}
    >
      <DayField
        label={say('Sampled on')}
        value={day}
        onInput={setDay}
        max={today}
        fault={isDay ? null : { found: day === '' ? say('nothing') : day, expected: say('a day up to today') }}
      />
      <Figures
        fields={analysed.map(({ key, label }) => ({
          key,
          label: say(label),
          ...(key === 'hardness' ? { hint: say('Another unit may be typed: 14 °dH, 15 gpg') } : {}),
        }))}
        texts={texts}
        faults={faults}
        change={(key, text) => setTexts({ ...texts, [key]: text })}
      />
      {isLast ? (
        <label class="check">
          <input type="checkbox" checked={isPresent} onChange={() => setPresent(!isPresent)} />
          <span>{say('From then on the book reckons with these figures')}</span>
        </label>
      ) : (
        <p class="quiet">{say('A younger analysis is there: the book goes on reckoning with that.')}</p>
      )}
      {isTried && isEmpty && Object.keys(faults).length === 0 && (
        <p class="fault" role="alert">
          {say('Found nothing; expected one figure at least.')}
        </p>
      )}
      <div class="buttons">
        <button type="submit" class="main" disabled={isBusy}>
          {say('Write it down')}
        </button>
        <button type="button" class="plain" onClick={cancel}>
          {say('Back')}
        </button>
      </div>
    </form>
  )
}

const hardnessNames = [
  ['ppm', message('ppm as CaCO3 (mg/L)'), 1],
  ['dH', message('°dH, German degrees'), 2],
  ['fH', message('°fH, French degrees'), 2],
  ['gpg', message('gpg, grains per US gallon'), 2],
  ['clark', message('°Clark, English degrees'), 2],
  ['mmol/L', message('mmol/L of calcium and magnesium'), 3],
] as const

/** A hardness in all the units in which it is said. */
function EveryUnit() {
  const [text, setText] = useState('')
  const read = readHardness(text)
  const all = 'fault' in read || read.value === null ? null : hardnessInAll(read.value, 'ppm')
  return (
    <section aria-label={say('Hardness in every unit')}>
      <h2>{say('Hardness in every unit')}</h2>
      <div class="narrow">
        <TextField
          numeric
          label={say('Hardness')}
          hint={say('ppm, or with its unit: 14 °dH, 15 gpg, 18 clark, 25 °fH, {mmol} mmol/L', {
            mmol: sayNumber(2.5, 1),
          })}
          value={text}
          onInput={setText}
          fault={'fault' in read ? read.fault : null}
        />
        {all !== null && (
          <dl class="pairs">
            {hardnessNames.map(([unit, name, decimals]) => (
              <>
                <dt>{say(name)}</dt>
                <dd>
                  <strong>{sayNumber(all[unit], decimals)}</strong>
                </dd>
              </>
            ))}
          </dl>
        )}
      </div>
    </section>
  )
}
