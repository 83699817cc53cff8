import {
  amountToReach,
  dispense,
  drumBatches,
  makePour,
  percentFromWaterParts,
  sayCautions,
  sayCount,
  sayNumber,
  sayParts,
  sayPercent,
  sayVolume,
  volumeFromConcentrate,
  waterPartsFromPercent,
} from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { useSumps } from '../api/queries.ts'
import type { Book, Units } from '../api/types.ts'
import { TextField } from '../fields/fields.tsx'
import { Figures } from '../fields/figures.tsx'
import { readLitres, readPercent, readPlain, readStrength } from '../fields/read.ts'
import { readTexts } from '../fields/read-texts.ts'
import { Cautions } from '../parts/cautions.tsx'
import { fieldFigure, fieldPercent, readerOf, shopUnits } from '../say/units.ts'

/** An amount of mix, from the drum or in one batch; ratios and percent both ways; a tank put right; a rest used up. */
export function Batch({ book }: { book: Book }) {
  const { units } = book.shop
  return (
    <>
      <p class="intro">How much concentrate and how much water for any amount of mix.</p>
      <Amount units={units} />
      <div class="part">
        <Ratio />
      </div>
      <div class="part">
        <PutRight units={units} />
      </div>
      <div class="part">
        <Rest units={units} />
      </div>
    </>
  )
}

type AmountKey = 'volume' | 'strength' | 'container' | 'drum' | 'open'

function Amount({ units }: { units: Units }) {
  const bench = useSumps().data?.[0]?.bench
  const { volumeName } = shopUnits[units]
  const [texts, setTexts] = useState<Record<AmountKey, string>>({
    volume: '',
    strength: '',
    container: '',
    drum: '',
    open: '',
  })
  const { values, faults } = readTexts(texts, {
    volume: (text) => readLitres(text, units, { above: 0 }),
    strength: readStrength,
    container: (text) => readLitres(text, units, { above: 0 }),
    drum: (text) => readLitres(text, units, { above: 0 }),
    open: (text) => readLitres(text, units),
  })
  const { volume, strength, container, drum, open } = values
  if (drum !== null && open !== null && open > drum) {
    faults.open = { found: texts.open.trim(), expected: `at most a full drum, ${texts.drum.trim()}` }
  }
  const change = (key: AmountKey, text: string) => setTexts({ ...texts, [key]: text })
  const isReady = volume !== null && strength !== null && Object.keys(faults).length === 0
  return (
    <div class="tool">
      <div class="tool-fields">
        <Figures
          fields={[
            { key: 'volume', label: `Mix wanted, ${volumeName}` },
            { key: 'strength', label: 'Strength, %', hint: 'Or 1:20, or 1 in 20' },
          ]}
          texts={texts}
          faults={faults}
          change={change}
        />
      </div>
      <section class="answer" aria-label="What it takes">
        {isReady ? (
          <AmountAnswer
            asked={{ volume, strength, container, drum, open: open ?? 0 }}
            units={units}
            bench={bench === undefined ? null : { container: bench.container, measure: bench.measure }}
          />
        ) : (
          <p role="status">
            {Object.keys(faults).length > 0
              ? 'A figure does not fit; its field says why.'
              : 'It takes an amount and a strength.'}
          </p>
        )}
      </section>
      <details class="more">
        <summary>In fillings of a tank, from drums</summary>
        <Figures
          fields={[
            { key: 'container', label: `The tank takes, ${volumeName}`, hint: 'Empty: all in one' },
            { key: 'drum', label: `A full drum holds, ${volumeName}` },
            { key: 'open', label: `In the open drum, ${volumeName}`, hint: 'It is used up first' },
          ]}
          texts={texts}
          faults={faults}
          change={change}
        />
      </details>
    </div>
  )
}

interface AmountAsked {
  volume: number
  strength: number
  container: number | null
  drum: number | null
  open: number
}

/** As many buckets as somebody carries for one batch; above that a tank is filled by the hose. */
const mostBuckets = 20

function AmountAnswer({
  asked: { volume, strength, container, drum, open },
  units,
  bench,
}: {
  asked: AmountAsked
  units: Units
  bench: {
    container: Parameters<typeof dispense>[1] | null
    measure: Parameters<typeof dispense>[1] | null
  } | null
}) {
  const reader = readerOf(units)
  const pour = makePour(volume, strength)
  const { part, rest } = sayParts(volume, pour.concentrate, reader)
  const batches = drumBatches({ volume, strength, container: container ?? volume, drum: drum ?? 1e6, open })
  const bucket = bench?.container ?? null
  const measured = bucket === null ? null : dispense(pour, bucket, bench?.measure ?? bucket)
  const each = sayParts(batches.each.volume, batches.each.concentrate, reader)
  return (
    <>
      <div role="status">
        <p class="headline">
          {pour.concentrate === 0
            ? `${rest} of water, no concentrate.`
            : `${part} of concentrate into ${rest} of water.`}
        </p>
        {batches.fillings > 1 && (
          <p>
            In {sayCount(batches.fillings, 'filling', 'fillings')} of {sayVolume(batches.each.volume, reader)}: each{' '}
            {each.rest} of water, then {each.part} of concentrate into it.
          </p>
        )}
        {measured !== null && measured.buckets <= mostBuckets && measured.volume > 0 && (
          <p>
            In {sayVolume(measured.container.capacity, reader)} buckets: {measured.fullWater} full
            {measured.restWater > 0 && <> and {sayVolume(measured.restWater, reader)}</>} of water
            {measured.concentrate > 0 && <>, {sayVolume(measured.concentrate, reader)} concentrate last</>}; as measured
            that is {sayVolume(measured.volume, reader)} at {sayPercent(measured.strength, reader)}.
          </p>
        )}
        {drum !== null && pour.concentrate > 0 && <p>{sayDrums(batches.drums, reader)}</p>}
      </div>
      {pour.concentrate > 0 && <Cautions cautions={sayCautions(['concentrateLast'])} />}
    </>
  )
}

function sayDrums(
  { fromOpen, opened, left }: ReturnType<typeof drumBatches>['drums'],
  reader: Parameters<typeof sayVolume>[1],
): string {
  const parts = [
    fromOpen > 0 ? `${sayVolume(fromOpen, reader)} from the open drum` : '',
    opened > 0 ? `${sayCount(opened, 'full drum', 'full drums')} to open` : '',
  ].filter((part) => part !== '')
  return `${parts.join(', then ')}; ${sayVolume(left, reader)} will be left in the one that stays open.`
}

/** 1 : N and percent, whichever is typed, with the convention spelled out. */
function Ratio() {
  const [texts, setTexts] = useState({ percent: '', parts: '' })
  const percent = readPercent(texts.percent, { above: 0, max: 100 })
  const parts = readPlain(texts.parts, { min: 0, max: 1e6 })
  const typePercent = (text: string) => {
    const read = readPercent(text, { above: 0, max: 100 })
    const other = 'fault' in read || read.value === null ? '' : fieldFigure(waterPartsFromPercent(read.value))
    setTexts({ percent: text, parts: other })
  }
  const typeParts = (text: string) => {
    const read = readPlain(text, { min: 0, max: 1e6 })
    const other = 'fault' in read || read.value === null ? '' : fieldPercent(percentFromWaterParts(read.value))
    setTexts({ parts: text, percent: other })
  }
  const n = 'fault' in parts ? null : parts.value
  return (
    <section aria-label="Ratio and percent">
      <h2>Ratio and percent</h2>
      <p class="intro">
        1 : N here means one part concentrate and N parts water, as a mixer and a bucket do it; 1 in N counts the
        finished mix.
      </p>
      <div class="figures ratio">
        <TextField
          numeric
          label="Strength, %"
          value={texts.percent}
          onInput={typePercent}
          fault={'fault' in percent ? percent.fault : null}
        />
        <TextField
          numeric
          label="1 part to N parts water"
          value={texts.parts}
          onInput={typeParts}
          fault={'fault' in parts ? parts.fault : null}
        />
      </div>
      <p role="status">
        {n !== null && (
          <>
            1 : {fieldFigure(n)} is <strong>{sayNumber(percentFromWaterParts(n), 2, {}, 0)} %</strong>:{' '}
            {fieldFigure(n + 1)} parts together, so it is the same as 1 in {fieldFigure(n + 1)}.
            {n > 1 && (
              <>
                {' '}
                Read as “1 in {fieldFigure(n)}” it would be {sayNumber(100 / n, 2, {}, 0)} %.
              </>
            )}
          </>
        )}
      </p>
    </section>
  )
}

type RightKey = 'volume' | 'concentration' | 'target'

/** A tank of mix that is too lean or too rich: what to add to it. */
function PutRight({ units }: { units: Units }) {
  const { volumeName } = shopUnits[units]
  const [texts, setTexts] = useState<Record<RightKey, string>>({ volume: '', concentration: '', target: '' })
  const { values, faults } = readTexts(texts, {
    volume: (text) => readLitres(text, units, { above: 0 }),
    concentration: (text) => readPercent(text),
    target: (text) => readPercent(text, { above: 0, max: 50 }),
  })
  const { volume, concentration, target } = values
  const isReady = volume !== null && concentration !== null && target !== null
  return (
    <section aria-label="A tank put right">
      <h2>A tank put right</h2>
      <p class="intro">
        A batch that stands mixed and is too lean or too rich. Not for a sump: there neat concentrate does not mix.
      </p>
      <Figures
        fields={[
          { key: 'volume', label: `In the tank, ${volumeName}` },
          { key: 'concentration', label: 'Strength now, %' },
          { key: 'target', label: 'Strength wanted, %' },
        ]}
        texts={texts}
        faults={faults}
        change={(key, text) => setTexts({ ...texts, [key]: text })}
      />
      <p role="status">{isReady && sayPutRight({ volume, concentration, target }, units)}</p>
    </section>
  )
}

function sayPutRight(
  { volume, concentration, target }: { volume: number; concentration: number; target: number },
  units: Units,
): string {
  const reader = readerOf(units)
  const strength = concentration < target ? 100 : 0
  const amount = amountToReach({ volume, concentration, strength, target })
  if (amount.outcome === 'unreachable') return 'No amount of water or concentrate makes that.'
  if (amount.add === 0) return 'It stands there already.'
  const what = strength === 100 ? 'concentrate, stirred in slowly' : 'water'
  return `Add ${sayVolume(amount.add, reader)} of ${what}. The tank then holds ${sayVolume(amount.total, reader)} at ${sayPercent(target, reader)}.`
}

type RestKey = 'concentrate' | 'strength'

/** The mix that a rest of concentrate makes, so that no drum stays open. */
function Rest({ units }: { units: Units }) {
  const { volumeName } = shopUnits[units]
  const reader = readerOf(units)
  const [texts, setTexts] = useState<Record<RestKey, string>>({ concentrate: '', strength: '' })
  const { values, faults } = readTexts(texts, {
    concentrate: (text) => readLitres(text, units, { above: 0 }),
    strength: (text) => {
      const read = readStrength(text)
      return 'value' in read && read.value === 0 ? { fault: { found: '0 %', expected: 'above 0' } } : read
    },
  })
  const { concentrate, strength } = values
  return (
    <section aria-label="A rest used up">
      <h2>A rest used up</h2>
      <Figures
        fields={[
          { key: 'concentrate', label: `Concentrate left, ${volumeName}` },
          { key: 'strength', label: 'Strength of the mix, %' },
        ]}
        texts={texts}
        faults={faults}
        change={(key, text) => setTexts({ ...texts, [key]: text })}
      />
      <p role="status">
        {concentrate !== null && strength !== null && (
          <>
            It makes{' '}
            <strong class="amount">{sayVolume(volumeFromConcentrate({ concentrate, strength }), reader)}</strong> of
            mix, with {sayVolume(volumeFromConcentrate({ concentrate, strength }) - concentrate, reader)} of water.
          </>
        )}
      </p>
    </section>
  )
}
