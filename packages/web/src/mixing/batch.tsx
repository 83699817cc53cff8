import {
  amountToReach,
  dispense,
  drumBatches,
  makePour,
  percentFromWaterParts,
  type Reader,
  say,
  sayCautions,
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
import { Said } from '../say/said.tsx'
import { fieldFigure, fieldPercent, fieldRounded, readerOf, shopUnits } from '../say/units.ts'

/** An amount of mix, from the drum or in one batch; ratios and percent both ways; a tank put right; a rest used up. */
export function Batch({ book }: { book: Book }) {
  const { units } = book.shop
  return (
    <>
      <p class="intro">{say('How much concentrate and how much water for any amount of mix.')}</p>
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
  const unit = say(shopUnits[units].volumeName)
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
    faults.open = {
      found: texts.open.trim(),
      expected: say('at most a full drum, {volume}', { volume: texts.drum.trim() }),
    }
  }
  const change = (key: AmountKey, text: string) => setTexts({ ...texts, [key]: text })
  const isReady = volume !== null && strength !== null && Object.keys(faults).length === 0
  return (
    <div class="tool">
      <div class="tool-fields">
        <Figures
          fields={[
            { key: 'volume', label: say('Mix wanted, {unit}', { unit }) },
            { key: 'strength', label: say('Strength, %'), hint: say('Or 1:20, or 1 in 20') },
          ]}
          texts={texts}
          faults={faults}
          change={change}
        />
      </div>
      <section class="answer" aria-label={say('What it takes')}>
        {isReady ? (
          <AmountAnswer
            asked={{ volume, strength, container, drum, open: open ?? 0 }}
            units={units}
            bench={bench === undefined ? null : { container: bench.container, measure: bench.measure }}
          />
        ) : (
          <p role="status">
            {Object.keys(faults).length > 0
              ? say('A figure does not fit; its field says why.')
              : say('It takes an amount and a strength.')}
          </p>
        )}
      </section>
      <details class="more">
        <summary>{say('In fillings of a tank, from drums')}</summary>
        <Figures
          fields={[
            { key: 'container', label: say('The tank takes, {unit}', { unit }), hint: say('Empty: all in one') },
            { key: 'drum', label: say('A full drum holds, {unit}', { unit }) },
            { key: 'open', label: say('In the open drum, {unit}', { unit }), hint: say('It is used up first') },
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
            ? say('{water} of water, no concentrate.', { water: rest })
            : say('{concentrate} of concentrate into {water} of water.', { concentrate: part, water: rest })}
        </p>
        {batches.fillings > 1 && (
          <p>
            {say(
              'In {count, plural, one {# filling} other {# fillings}} of {volume}: each {water} of water, then {concentrate} of concentrate into it.',
              {
                count: batches.fillings,
                volume: sayVolume(batches.each.volume, reader),
                water: each.rest,
                concentrate: each.part,
              },
            )}
          </p>
        )}
        {measured !== null && measured.buckets <= mostBuckets && measured.volume > 0 && (
          <p>{sayBuckets(measured, reader)}</p>
        )}
        {drum !== null && pour.concentrate > 0 && <p>{sayDrums(batches.drums, reader)}</p>}
      </div>
      {pour.concentrate > 0 && <Cautions cautions={sayCautions(['concentrateLast'])} />}
    </>
  )
}

/** Full buckets of water, the rest of the water, the concentrate last; and what that makes as measured. */
function sayBuckets(measured: ReturnType<typeof dispense>, reader: Reader): string {
  const blanks = {
    bucket: sayVolume(measured.container.capacity, reader),
    full: measured.fullWater,
    rest: sayVolume(measured.restWater, reader),
    concentrate: sayVolume(measured.concentrate, reader),
    volume: sayVolume(measured.volume, reader),
    strength: sayPercent(measured.strength, reader),
  }
  if (measured.concentrate > 0) {
    return measured.restWater > 0
      ? say(
          'In {bucket} buckets: {full, plural, other {# full}} and {rest} of water, {concentrate} concentrate last; as measured that is {volume} at {strength}.',
          blanks,
        )
      : say(
          'In {bucket} buckets: {full, plural, other {# full}} of water, {concentrate} concentrate last; as measured that is {volume} at {strength}.',
          blanks,
        )
  }
  return measured.restWater > 0
    ? say(
        'In {bucket} buckets: {full, plural, other {# full}} and {rest} of water; as measured that is {volume} at {strength}.',
        blanks,
      )
    : say(
        'In {bucket} buckets: {full, plural, other {# full}} of water; as measured that is {volume} at {strength}.',
        blanks,
      )
}

function sayDrums({ fromOpen, opened, left }: ReturnType<typeof drumBatches>['drums'], reader: Reader): string {
  const blanks = { volume: sayVolume(fromOpen, reader), opened, left: sayVolume(left, reader) }
  if (opened === 0) {
    return say('{volume} from the open drum; {left} will be left in the one that stays open.', blanks)
  }
  return fromOpen > 0
    ? say(
        '{volume} from the open drum, then {opened, plural, one {# full drum} other {# full drums}} to open; {left} will be left in the one that stays open.',
        blanks,
      )
    : say(
        '{opened, plural, one {# full drum} other {# full drums}} to open; {left} will be left in the one that stays open.',
        blanks,
      )
}

/** The digits of a field, in the reader's number signs. */
const sayFigure = (value: number): string => sayNumber(fieldRounded(value), 6, {}, 0)

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
    <section aria-label={say('Ratio and percent')}>
      <h2>{say('Ratio and percent')}</h2>
      <p class="intro">
        {say(
          '1 : N here means one part concentrate and N parts water, as a mixer and a bucket do it; 1 in N counts the finished mix.',
        )}
      </p>
      <div class="figures ratio">
        <TextField
          numeric
          label={say('Strength, %')}
          value={texts.percent}
          onInput={typePercent}
          fault={'fault' in percent ? percent.fault : null}
        />
        <TextField
          numeric
          label={say('1 part to N parts water')}
          value={texts.parts}
          onInput={typeParts}
          fault={'fault' in parts ? parts.fault : null}
        />
      </div>
      <p role="status">
        {n !== null && (
          <>
            <Said
              text="1 : {water} is <strong>{percent} %</strong>: {all} parts together, so it is the same as 1 in {all}."
              values={{
                water: sayFigure(n),
                percent: sayNumber(percentFromWaterParts(n), 2, {}, 0),
                all: sayFigure(n + 1),
              }}
              parts={{ strong: (inside) => <strong>{inside}</strong> }}
            />{' '}
            {n > 1 &&
              say('Read as “1 in {parts}” it would be {percent} %.', {
                parts: sayFigure(n),
                percent: sayNumber(100 / n, 2, {}, 0),
              })}
          </>
        )}
      </p>
    </section>
  )
}

type RightKey = 'volume' | 'concentration' | 'target'

/** A tank of mix that is too lean or too rich: what to add to it. */
function PutRight({ units }: { units: Units }) {
  const unit = say(shopUnits[units].volumeName)
  const [texts, setTexts] = useState<Record<RightKey, string>>({ volume: '', concentration: '', target: '' })
  const { values, faults } = readTexts(texts, {
    volume: (text) => readLitres(text, units, { above: 0 }),
    concentration: (text) => readPercent(text),
    target: (text) => readPercent(text, { above: 0, max: 50 }),
  })
  const { volume, concentration, target } = values
  const isReady = volume !== null && concentration !== null && target !== null
  return (
    <section aria-label={say('A tank put right')}>
      <h2>{say('A tank put right')}</h2>
      <p class="intro">
        {say(
          'A batch that stands mixed and is too lean or too rich. Not for a sump: there neat concentrate does not mix.',
        )}
      </p>
      <Figures
        fields={[
          { key: 'volume', label: say('In the tank, {unit}', { unit }) },
          { key: 'concentration', label: say('Strength now, %') },
          { key: 'target', label: say('Strength wanted, %') },
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
  if (amount.outcome === 'unreachable') return say('No amount of water or concentrate makes that.')
  if (amount.add === 0) return say('It stands there already.')
  return say(
    strength === 100
      ? 'Add {volume} of concentrate, stirred in slowly. The tank then holds {total} at {strength}.'
      : 'Add {volume} of water. The tank then holds {total} at {strength}.',
    {
      volume: sayVolume(amount.add, reader),
      total: sayVolume(amount.total, reader),
      strength: sayPercent(target, reader),
    },
  )
}

type RestKey = 'concentrate' | 'strength'

/** The mix that a rest of concentrate makes, so that no drum stays open. */
function Rest({ units }: { units: Units }) {
  const unit = say(shopUnits[units].volumeName)
  const reader = readerOf(units)
  const [texts, setTexts] = useState<Record<RestKey, string>>({ concentrate: '', strength: '' })
  const { values, faults } = readTexts(texts, {
    concentrate: (text) => readLitres(text, units, { above: 0 }),
    strength: (text) => {
      const read = readStrength(text)
      return 'value' in read && read.value === 0 ? { fault: { found: '0 %', expected: say('above 0') } } : read
    },
  })
  const { concentrate, strength } = values
  return (
    <section aria-label={say('A rest used up')}>
      <h2>{say('A rest used up')}</h2>
      <Figures
        fields={[
          { key: 'concentrate', label: say('Concentrate left, {unit}', { unit }) },
          { key: 'strength', label: say('Strength of the mix, %') },
        ]}
        texts={texts}
        faults={faults}
        change={(key, text) => setTexts({ ...texts, [key]: text })}
      />
      <p role="status">
        {concentrate !== null && strength !== null && (
          <Said
            text="It makes <strong>{mix}</strong> of mix, with {water} of water."
            values={{
              mix: sayVolume(volumeFromConcentrate({ concentrate, strength }), reader),
              water: sayVolume(volumeFromConcentrate({ concentrate, strength }) - concentrate, reader),
            }}
            parts={{ strong: (inside) => <strong class="amount">{inside}</strong> }}
          />
        )}
      </p>
    </section>
  )
}
