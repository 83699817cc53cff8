import {
  type BlendWater,
  blendWaters,
  type ConflictingLimit,
  lowerFirst,
  type Mineral,
  type MineralLimits,
  makeUpLimits,
  minerals,
  type PourableWater,
  sayList,
  sayNumber,
  sayVolume,
  type WaterBlend,
} from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { useSumps } from '../api/queries.ts'
import type { Book, Thing } from '../api/types.ts'
import { SelectField, Taps } from '../fields/fields.tsx'
import { Figures } from '../fields/figures.tsx'
import { fieldFigure, readerOf, sayMoney, sayPricePerVolume, shopUnits } from '../say/units.ts'
import { type LimitKey, type LimitTexts, readLimits, readWater, unknownFaults, type WaterRead } from './blend-texts.ts'
import { limitOf } from './limit-of.ts'
import { type WaterTexts, waterKeys, waterTexts } from './water-texts.ts'

const noLimits: LimitTexts = {
  hardnessLow: '',
  hardness: '',
  chloride: '',
  sulfate: '',
  nitrate: '',
  cycles: '',
  volume: '',
}

/** How much of which water stays inside limits: of the water itself, or of a sump once it has come to rest. */
export function BlendTool({ book }: { book: Book }) {
  const { units } = book.shop
  const sumps = useSumps().data ?? []
  const [ofSump, setOfSump] = useState(false)
  const [sumpId, setSumpId] = useState('')
  const [limitTexts, setLimitTexts] = useState(noLimits)
  const [typed, setTyped] = useState<Readonly<Record<string, WaterTexts>>>({})
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const { volumeName } = shopUnits[units]
  const asked = readLimits(limitTexts, units)
  const textsOf = (water: Thing) => typed[water.id] ?? waterTexts(water, units)
  const taken = book.waters.filter(({ id }) => !left.has(id))
  const waters = taken.map((water) => readWater(water.id, textsOf(water), units))
  const poured = waters.filter(({ id }) => book.waters.find((water) => water.id === id)?.kind !== 'softened')
  const faults = unknownFaults(poured, asked.limits)
  const pickSump = (id: string) => {
    setSumpId(id)
    const sump = sumps.find((each) => each.sump === id)
    const text = (value: number | null) => (value === null ? '' : fieldFigure(value))
    // Its lower end is for the charge; what tops up a sump may be as soft as it comes.
    setLimitTexts({
      ...limitTexts,
      hardnessLow: '',
      hardness: text(limitOf(book, sump, 'hardness')),
      chloride: text(limitOf(book, sump, 'chloride')),
    })
  }
  if (book.waters.length === 0) return <p>The book knows no water to blend. Add waters under Shop.</p>
  const whose = ofSump ? 'in the sump' : 'of the blend'
  return (
    <>
      <p class="intro">
        A fresh charge wants some minerals, for very soft water foams; a top-up wants as few as can be. The cheapest
        blend inside the limits, of equally cheap ones that with the fewest waters.
      </p>
      <div class="tool">
        <div class="tool-fields">
          <Taps
            legend="The limits are those of"
            name="blend-limits"
            value={ofSump ? 'sump' : 'water'}
            choices={[
              ['water', 'the water itself'],
              ['sump', 'a sump it tops up'],
            ]}
            onPick={(value) => setOfSump(value === 'sump')}
          />
          {ofSump && (
            <SelectField
              label="Sump"
              value={sumpId}
              onInput={pickSump}
              hint="Fills in what its fluid’s limits say"
              choices={[['', 'none: type the limits'], ...sumps.map(({ sump, name }) => [sump, name] as const)]}
            />
          )}
          <Figures<LimitKey>
            fields={[
              { key: 'volume', label: `To blend, ${volumeName}` },
              ...(ofSump
                ? [{ key: 'cycles' as const, label: 'Cycles', hint: 'Times as rich as its top-ups: see Ahead' }]
                : []),
              { key: 'hardnessLow', label: `Least hardness ${whose}, ppm` },
              { key: 'hardness', label: `Most hardness ${whose}, ppm` },
              { key: 'chloride', label: `Most chloride ${whose}, mg/L` },
              { key: 'sulfate', label: `Most sulfate ${whose}, mg/L` },
              { key: 'nitrate', label: `Most nitrate ${whose}, mg/L` },
            ]}
            texts={limitTexts}
            faults={asked.faults}
            change={(key, text) => setLimitTexts({ ...limitTexts, [key]: text })}
          />
        </div>
        <BlendAnswer asked={asked} ofSump={ofSump} waters={waters} faults={faults} book={book} />
        <div class="tool-fields">
          {book.waters.map((water) => (
            <fieldset class="blend-water" key={water.id}>
              <legend>{water.name}</legend>
              <label class="check">
                <input
                  type="checkbox"
                  checked={!left.has(water.id)}
                  onChange={() => {
                    const next = new Set(left)
                    if (!next.delete(water.id)) next.add(water.id)
                    setLeft(next)
                  }}
                />
                <span>{water.kind === 'softened' ? 'Softened: never blended in' : 'May be used'}</span>
              </label>
              {!left.has(water.id) && water.kind !== 'softened' && (
                <Figures
                  fields={waterKeys.map((key) => ({ key, label: labelOf(key, book) }))}
                  texts={textsOf(water)}
                  faults={faults.get(water.id) ?? {}}
                  change={(key, text) => setTyped({ ...typed, [water.id]: { ...textsOf(water), [key]: text } })}
                />
              )}
            </fieldset>
          ))}
        </div>
      </div>
    </>
  )
}

const labelOf = (key: (typeof waterKeys)[number], { shop }: Book): string => {
  if (key === 'hardness') return 'Hardness, ppm'
  if (key === 'cost') return `Price, ${shop.currency} per ${shopUnits[shop.units].volumeWord}`
  return `${key[0]!.toUpperCase()}${key.slice(1)}, mg/L`
}

interface BlendAnswerProps {
  asked: ReturnType<typeof readLimits>
  ofSump: boolean
  waters: readonly WaterRead[]
  faults: ReturnType<typeof unknownFaults>
  book: Book
}

function BlendAnswer({ asked, ofSump, waters, faults, book }: BlendAnswerProps) {
  const isFaulty =
    Object.keys(asked.faults).length > 0 || [...faults.values()].some((each) => Object.keys(each).length > 0)
  const lacks =
    waters.length === 0
      ? 'one water at least'
      : asked.volume === null
        ? 'an amount'
        : ofSump && asked.cycles === null
          ? 'the sump’s cycles'
          : null
  if (isFaulty || lacks !== null) {
    return (
      <section class="answer" aria-label="The blend">
        <p role="status">{isFaulty ? 'A figure does not fit; its field says why.' : `It takes ${lacks}.`}</p>
      </section>
    )
  }
  const limits = ofSump ? makeUpLimits({ sumpLimits: asked.limits, cycles: asked.cycles! }) : asked.limits
  const blend = blendWaters({
    waters: waters.map((water) => blendWater(water, book)),
    limits,
    volume: asked.volume!,
  })
  const nameOf = (id: string) => book.waters.find((water) => water.id === id)?.name ?? id
  return (
    <section class="answer" aria-label="The blend">
      <div role="status">
        <Outcome blend={blend} nameOf={nameOf} cycles={ofSump ? asked.cycles! : 1} book={book} />
        {ofSump && <p class="quiet">{sayLimits(limits, asked.cycles!)}</p>}
        {blend.leftOut.length > 0 && (
          <p class="quiet">
            {sayList(blend.leftOut.map(nameOf))} left out: softened water’s sodium and chloride build up in a sump.
          </p>
        )}
      </div>
    </section>
  )
}

function Outcome({
  blend,
  nameOf,
  cycles,
  book,
}: {
  blend: WaterBlend
  nameOf(id: string): string
  cycles: number
  book: Book
}) {
  const { units, currency } = book.shop
  const reader = readerOf(units)
  switch (blend.outcome) {
    case 'only-softened':
      return <p class="headline">Only softened water is there; it is never blended in.</p>
    case 'conflict':
      return (
        <>
          <p class="headline">No blend of these waters keeps within the limits.</p>
          <ul class="ways">
            {blend.conflict.map((limit) => (
              <li key={`${limit.mineral} ${limit.end}`}>{sayConflict(limit, blend.conflict.length > 1, cycles)}</li>
            ))}
          </ul>
          <p>
            {blend.conflict.length > 1
              ? 'These limits stand against each other: one of them must give, or another water must come in.'
              : 'That limit alone is out of reach: it must give, or another water must come in.'}
          </p>
        </>
      )
    case 'blend':
      return (
        <>
          <p class="headline">
            {sayList(blend.parts.map(({ id, volume }) => `${sayVolume(volume, reader)} of ${lowerFirst(nameOf(id))}`))}.
          </p>
          {blend.parts.length > 1 && (
            <p>
              {sayList(
                blend.parts.map(({ id, fraction }) => `${sayNumber(100 * fraction, 0)} % ${lowerFirst(nameOf(id))}`),
              )}
              .
            </p>
          )}
          <dl class="pairs">
            {minerals.map((mineral) => (
              <>
                <dt>{mineral}</dt>
                <dd>{blend[mineral] === null ? 'not known' : sayAmount(blend[mineral], mineral)}</dd>
              </>
            ))}
            {blend.costPerLitre !== null && blend.cost !== null && (
              <>
                <dt>price</dt>
                <dd>
                  {sayMoney(blend.cost, currency)}, {sayPricePerVolume(blend.costPerLitre, { currency, units })}
                </dd>
              </>
            )}
          </dl>
        </>
      )
  }
}

const sayAmount = (value: number, mineral: Mineral): string =>
  `${sayNumber(value, value < 10 ? 1 : 0, {}, 0)} ${mineral === 'hardness' ? 'ppm' : 'mg/L'}`

/** One limit of a conflict, and how near these waters come to it; for a sump at its cycles, as it was typed. */
function sayConflict({ mineral, end, limit, reach }: ConflictingLimit, isOneOfMany: boolean, cycles: number): string {
  const side = end === 'low' ? 'at least' : 'at most'
  const name = mineral[0]!.toUpperCase() + mineral.slice(1)
  const nearest = isOneOfMany ? 'while the others hold, these waters come to' : 'these waters come to'
  return `${name} ${side} ${sayAmount(limit * cycles, mineral)}: ${nearest} ${sayAmount(reach * cycles, mineral)} at the nearest.`
}

function sayLimits(limits: MineralLimits, cycles: number): string {
  const parts = minerals.flatMap((mineral) => {
    const { low, high } = limits[mineral] ?? {}
    const ends = [
      low === undefined ? '' : `at least ${sayAmount(low, mineral)}`,
      high === undefined ? '' : `at most ${sayAmount(high, mineral)}`,
    ].filter((end) => end !== '')
    return ends.length === 0 ? [] : [`${mineral} ${ends.join(' and ')}`]
  })
  return parts.length === 0
    ? 'No limit is typed.'
    : `At ${sayNumber(cycles, 1, {}, 0)} cycles the water may hold ${sayList(parts)}.`
}

function blendWater({ id, values }: WaterRead, book: Book): BlendWater {
  const kind = book.waters.find((water) => water.id === id)?.kind as PourableWater['kind']
  const known = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== null))
  return { id, kind, ...known }
}
