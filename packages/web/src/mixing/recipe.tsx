import {
  advise,
  type BenchContainer,
  type OnHand,
  pourWays,
  type RecipeBench,
  say,
  sayList,
  type Way,
} from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { useSumps } from '../api/queries.ts'
import type { Book, SumpNow, Units } from '../api/types.ts'
import { BandLine } from '../band-line/band-line.tsx'
import { SelectField, TextField } from '../fields/fields.tsx'
import { type FigureField, Figures } from '../fields/figures.tsx'
import { type Fault, readBrix, readLitres, readStrength } from '../fields/read.ts'
import { grown, isEmptyRow, type Row } from '../fields/rows.ts'
import { RowsTable } from '../fields/rows-table.tsx'
import { Gauge } from '../gauge/gauge.tsx'
import { Cautions } from '../parts/cautions.tsx'
import { readerOf, shopUnits } from '../say/units.ts'
import { inTrueLitres } from '../standing/true-litres.ts'
import {
  type BenchKey,
  type BenchRead,
  benchTexts,
  emptyBench,
  readBench,
  recipeBench,
  strengthTexts,
  sumpToPour,
} from './bench.ts'
import { settingsOf } from './mixer-curve.ts'
import { sayLanding, sayWay, type WayNames } from './say-way.ts'

type PremixRow = Row<'strength' | 'volume'>
const premixKeys = ['strength', 'volume'] as const

/** A recipe worked out from figures that can all be changed: a sump's as the book knows them, or any. */
export function RecipeTool({ book }: { book: Book }) {
  const sumps = (useSumps().data ?? []).map(inTrueLitres)
  const { units } = book.shop
  const [id, setId] = useState('')
  const [texts, setTexts] = useState(emptyBench)
  const [brix, setBrix] = useState('')
  const [water, setWater] = useState('')
  const [bucket, setBucket] = useState<string | null>(null)
  const [premixes, setPremixes] = useState<readonly PremixRow[]>(grown<'strength' | 'volume'>([], premixKeys))
  const sump = sumps.find((each) => each.sump === id) ?? null
  const shopBench = (sump ?? sumps[0])?.bench
  const scale = sump?.bench ?? null
  const hasScale = scale !== null && (scale.brixFactor !== null || scale.brixChart !== null)

  const read = readBench(texts, units, sump)
  const container = containerOf(bucket, book, shopBench)
  const waters = shopBench?.waters ?? []
  const bench = recipeBench(read, {
    class: sump?.bench.class ?? null,
    waters: water === '' ? waters : waters.filter((each) => each.id === water),
    container,
    measure: shopBench?.measure ?? null,
  })
  const onHand = readPremixes(premixes, units)

  const pick = (next: string) => {
    const found = sumps.find((each) => each.sump === next)
    setId(next)
    setTexts(found === undefined ? emptyBench : benchTexts(found, units))
    setBrix('')
  }
  const change = (key: BenchKey, text: string) => {
    setTexts({ ...texts, [key]: text })
    if (key === 'concentration') setBrix('')
  }
  const typeBrix = (text: string) => {
    setBrix(text)
    const value = readBrix(text)
    const strength =
      'fault' in value || value.value === null || scale === null ? null : strengthTexts(value.value, scale)
    if (strength !== null) setTexts({ ...texts, ...strength })
  }
  const isChanged = sump !== null && JSON.stringify(benchTexts(sump, units)) !== JSON.stringify(texts)

  return (
    <>
      <p class="intro">{say('Pick a sump, or type any figures; the recipe follows every change.')}</p>
      <div class="tool">
        <div class="tool-fields">
          <SelectField
            label={say('Sump')}
            value={id}
            onInput={pick}
            choices={[['', say('none: type the figures')], ...sumps.map(({ sump, name }) => [sump, name] as const)]}
          />
          <Figures fields={firstFields(units)} texts={texts} faults={read.faults} change={change}>
            {hasScale && (
              <TextField
                numeric
                label={say('Refractometer, °Brix')}
                hint={say('Gives the strength now')}
                value={brix}
                onInput={typeBrix}
                fault={brixFault(brix, scale)}
              />
            )}
          </Figures>
          {isChanged && (
            <div>
              <button type="button" class="plain" onClick={() => pick(id)}>
                {say('Back to the book’s figures')}
              </button>
            </div>
          )}
        </div>
        <RecipeAnswer
          read={read}
          bench={bench}
          units={units}
          onHand={{
            premixes: onHand.premixes,
            mixerStrengths: settingsOfAll(book).map(({ percent }) => percent),
            buckets: container !== null,
          }}
          names={{
            water: waterNameOf(bench),
            settings: settingsOfAll(book),
            premixes: Object.fromEntries(
              onHand.premixes.map(({ id }, i) => [id, say('premix {number}', { number: i + 1 })]),
            ),
          }}
        />
        <details class="more">
          <summary>{say('Marks, mixer, waters, premix')}</summary>
          <div class="tool-fields">
            <Figures fields={moreFields(units)} texts={texts} faults={read.faults} change={change} />
            <div class="figures">
              <SelectField
                label={say('Water')}
                value={water}
                onInput={setWater}
                hint={say('Softened water is never chosen by itself')}
                choices={[
                  ['', say('the one with the fewest minerals')],
                  ...waters.map(({ id, name }) => [id, name] as const),
                ]}
              />
              <SelectField
                label={say('Bucket')}
                value={container?.id ?? 'none'}
                onInput={setBucket}
                choices={[['none', say('no bucket')], ...book.containers.map(({ id, name }) => [id, name] as const)]}
              />
            </div>
            <RowsTable
              one={say('Premix')}
              caption={say('Mix that stands ready')}
              columns={[
                { key: 'strength', label: say('strength, %') },
                { key: 'volume', label: say(shopUnits[units].volumeName) },
              ]}
              rows={premixes}
              faults={onHand.faults}
              change={setPremixes}
            />
          </div>
        </details>
      </div>
    </>
  )
}

const firstFields = (units: Units): FigureField<BenchKey>[] => {
  const unit = say(shopUnits[units].volumeName)
  return [
    { key: 'volume', label: say('In it now, {unit}', { unit }), hint: say('Lines included') },
    { key: 'concentration', label: say('Strength now, %') },
    { key: 'fillVolume', label: say('Full mark, {unit}', { unit }) },
    { key: 'target', label: say('Target, %') },
    { key: 'low', label: say('Band from, %') },
    { key: 'high', label: say('Band to, %') },
  ]
}

const moreFields = (units: Units): FigureField<BenchKey>[] => {
  const unit = say(shopUnits[units].volumeName)
  return [
    { key: 'strongest', label: say('Strongest mix poured, %'), hint: say('Empty: 20 %') },
    { key: 'leanest', label: say('Leanest mix poured, %'), hint: say('Empty: plain water') },
    { key: 'capacity', label: say('Brim, {unit}', { unit }), hint: say('Empty: a quarter above the mark') },
    { key: 'minVolume', label: say('Pumps’ suction, {unit}', { unit }) },
    { key: 'volumeGive', label: say('Volume may be off by, {unit}', { unit }), hint: say('Either way, 90 % sure') },
    { key: 'concentrationGive', label: say('Strength may be off by, %'), hint: say('Either way, 90 % sure') },
  ]
}

interface AnswerProps {
  read: BenchRead
  bench: RecipeBench
  units: Units
  onHand: OnHand
  names: WayNames
}

function RecipeAnswer({ read, bench, units, onHand, names }: AnswerProps) {
  const { standing, faults, missing } = read
  const reader = readerOf(units)
  const faulty = Object.keys(faults).length
  if (faulty > 0 || missing.length > 0) {
    return (
      <section class="answer" aria-label={say('What to pour')}>
        <p role="status">
          {faulty > 0
            ? say('A figure does not fit; its field says why.')
            : say('For a recipe it takes {list}.', { list: sayList(missing) })}
        </p>
      </section>
    )
  }
  const { recipe, words, alternatives } = advise(standing, bench, reader)
  // Where nothing may be poured yet, or the fill must end under the mark, no way to the mark is offered.
  const isHeld = ['refuse', 'measure-first'].includes(recipe.action) || recipe.because.includes('kept-below-brim')
  const sump = isHeld ? null : sumpToPour(read, bench)
  const ways =
    sump === null
      ? []
      : pourWays(sump, { ...onHand, strongest: bench.maxStrength, leanest: bench.minStrength, waters: bench.waters })
  return (
    <section class="answer" aria-label={say('What to pour')}>
      <div role="status">
        <p class="headline">{words.headline}.</p>
        {words.how !== '' && <p>{words.how}</p>}
        {words.outcome !== '' && <p>{words.outcome}</p>}
        {words.because.length > 0 && <p class="quiet">{words.because.join(' ')}</p>}
      </div>
      <BandLine
        band={bench.band}
        target={bench.target}
        now={standing.concentration}
        after={recipe.add === null ? null : (recipe.result?.concentration ?? null)}
      />
      <Gauge volume={standing.volume} bench={bench} units={units} />
      {alternatives.length > 0 && (
        <ul class="ways">
          {alternatives.map((way) => (
            <li>{way}</li>
          ))}
        </ul>
      )}
      <Ways ways={ways} bench={bench} names={names} units={units} />
      <Cautions cautions={words.cautions} />
      <p class="quiet">
        {say('Guidance only: the fluid’s label and safety data sheet, the supplier and local rules come first.')}
      </p>
    </section>
  )
}

const waysAtFirst = 4

/** Every way to the mark with what the shop has ready, least fuss first. */
function Ways({
  ways,
  bench,
  names,
  units,
}: {
  ways: readonly Way[]
  bench: RecipeBench
  names: WayNames
  units: Units
}) {
  if (ways.length === 0 || bench.target === null) return null
  const reader = readerOf(units)
  const goal = { target: bench.target, band: bench.band }
  const lines = (some: readonly Way[]) => (
    <ul class="ways">
      {some.map((way) => (
        <li class={way.inBand ? undefined : 'outside'}>
          {sayWay(way, names, reader)}: <strong>{sayLanding(way, goal, reader)}</strong>
        </li>
      ))}
    </ul>
  )
  const rest = ways.slice(waysAtFirst)
  return (
    <>
      <h3>{say('Ways to the mark')}</h3>
      <p class="quiet">{say('With what stands ready, least fuss first.')}</p>
      {lines(ways.slice(0, waysAtFirst))}
      {rest.length > 0 && (
        <details>
          <summary>{say('{count, plural, one {# more way} other {# more ways}}', { count: rest.length })}</summary>
          {lines(rest)}
        </details>
      )}
    </>
  )
}

/** The bucket chosen; the shop's usual one as long as nobody chose. */
function containerOf(bucket: string | null, book: Book, bench: RecipeBench | undefined): BenchContainer | null {
  if (bucket === null) return bench?.container ?? null
  const found = book.containers.find(({ id }) => id === bucket)
  if (found === undefined || typeof found.capacity !== 'number') return null
  const { id, name, capacity, graduation } = found
  return { id, name, capacity, ...(typeof graduation === 'number' ? { graduation } : {}) }
}

const settingsOfAll = (book: Book) =>
  book.mixers.flatMap((mixer) => settingsOf(mixer).map(([dial, percent]) => ({ mixer: mixer.name, dial, percent })))

/** The name of the water that a recipe on this bench would pour. */
function waterNameOf(bench: RecipeBench): string {
  const usable = bench.waters.filter(({ kind }) => kind !== 'softened')
  const first = usable.toSorted((a, b) => (a.hardness ?? 1000) - (b.hardness ?? 1000))[0]
  return first?.name ?? say('water')
}

function readPremixes(rows: readonly PremixRow[], units: Units) {
  const premixes: { id: string; strength: number; volume: number }[] = []
  const faults = rows.map((row, i): Partial<Record<'strength' | 'volume', Fault | string>> => {
    if (isEmptyRow(row)) return {}
    const strength = readStrength(row.strength)
    const volume = readLitres(row.volume, units, { above: 0 })
    if (!('fault' in strength) && !('fault' in volume) && strength.value !== null && volume.value !== null) {
      premixes.push({ id: `premix-${i}`, strength: strength.value, volume: volume.value })
    }
    return {
      ...('fault' in strength ? { strength: strength.fault } : {}),
      ...('fault' in volume ? { volume: volume.fault } : {}),
    }
  })
  return { premixes, faults }
}

function brixFault(text: string, scale: SumpNow['bench'] | null): Fault | null {
  const read = readBrix(text)
  if ('fault' in read) return read.fault
  if (read.value === null || scale === null || strengthTexts(read.value, scale) !== null) return null
  return { found: `${text.trim()} °Brix`, expected: say('a reading that the fluid’s chart or factor reaches') }
}
