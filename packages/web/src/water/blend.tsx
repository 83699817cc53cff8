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
  say,
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
import { mineralNames, type WaterTexts, waterKeys, waterTexts } from './water-texts.ts'

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
  if (book.waters.length === 0) return <p>{say('The book knows no water to blend. Add waters under Shop.')}</p>
  return (
    <>
      <p class="intro">
        {say(
          'A fresh charge wants some minerals, for very soft water foams; a top-up wants as few as can be. The cheapest blend inside the limits, of equally cheap ones that with the fewest waters.',
        )}
      </p>
      <div class="tool">
        <div class="tool-fields">
          <Taps
            legend={say('The limits are those of')}
            name="blend-limits"
            value={ofSump ? 'sump' : 'water'}
            choices={[
              ['water', say('the water itself')],
              ['sump', say('a sump it tops up')],
            ]}
            onPick={(value) => setOfSump(value === 'sump')}
          />
          {ofSump && (
            <SelectField
              label={say('Sump')}
              value={sumpId}
              onInput={pickSump}
              hint={say('Fills in what its fluid’s limits say')}
              choices={[['', say('none: type the limits')], ...sumps.map(({ sump, name }) => [sump, name] as const)]}
            />
          )}
          <Figures<LimitKey>
            fields={[
              { key: 'volume', label: say('To blend, {unit}', { unit: say(volumeName) }) },
              ...(ofSump
                ? [
                    {
                      key: 'cycles' as const,
                      label: say('Cycles'),
                      hint: say('Times as rich as its top-ups: see Ahead'),
                    },
                  ]
                : []),
              {
                key: 'hardnessLow',
                label: say(ofSump ? 'Least hardness in the sump, ppm' : 'Least hardness of the blend, ppm'),
              },
              {
                key: 'hardness',
                label: say(ofSump ? 'Most hardness in the sump, ppm' : 'Most hardness of the blend, ppm'),
              },
              {
                key: 'chloride',
                label: say(ofSump ? 'Most chloride in the sump, mg/L' : 'Most chloride of the blend, mg/L'),
              },
              {
                key: 'sulfate',
                label: say(ofSump ? 'Most sulfate in the sump, mg/L' : 'Most sulfate of the blend, mg/L'),
              },
              {
                key: 'nitrate',
                label: say(ofSump ? 'Most nitrate in the sump, mg/L' : 'Most nitrate of the blend, mg/L'),
              },
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
                <span>{say(water.kind === 'softened' ? 'Softened: never blended in' : 'May be used')}</span>
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
  if (key === 'hardness') return say('Hardness, ppm')
  if (key === 'cost') {
    return say('Price, {currency} per {unit}', { currency: shop.currency, unit: shopUnits[shop.units].volumeWord })
  }
  return say('{mineral}, mg/L', { mineral: say(mineralNames[key].name) })
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
      ? say('one water at least')
      : asked.volume === null
        ? say('an amount')
        : ofSump && asked.cycles === null
          ? say('the sump’s cycles')
          : null
  if (isFaulty || lacks !== null) {
    return (
      <section class="answer" aria-label={say('The blend')}>
        <p role="status">
          {lacks === null || isFaulty
            ? say('A figure does not fit; its field says why.')
            : say('It takes {list}.', { list: lacks })}
        </p>
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
    <section class="answer" aria-label={say('The blend')}>
      <div role="status">
        <Outcome blend={blend} nameOf={nameOf} cycles={ofSump ? asked.cycles! : 1} book={book} />
        {ofSump && <p class="quiet">{sayLimits(limits, asked.cycles!)}</p>}
        {blend.leftOut.length > 0 && (
          <p class="quiet">
            {say('{waters} left out: softened water’s sodium and chloride build up in a sump.', {
              waters: sayList(blend.leftOut.map(nameOf)),
            })}
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
      return <p class="headline">{say('Only softened water is there; it is never blended in.')}</p>
    case 'conflict':
      return (
        <>
          <p class="headline">{say('No blend of these waters keeps within the limits.')}</p>
          <ul class="ways">
            {blend.conflict.map((limit) => (
              <li key={`${limit.mineral} ${limit.end}`}>{sayConflict(limit, blend.conflict.length > 1, cycles)}</li>
            ))}
          </ul>
          <p>
            {blend.conflict.length > 1
              ? say('These limits stand against each other: one of them must give, or another water must come in.')
              : say('That limit alone is out of reach: it must give, or another water must come in.')}
          </p>
        </>
      )
    case 'blend':
      return (
        <>
          <p class="headline">
            {sayList(
              blend.parts.map(({ id, volume }) =>
                say('{volume} of {water}', { volume: sayVolume(volume, reader), water: lowerFirst(nameOf(id)) }),
              ),
            )}
            .
          </p>
          {blend.parts.length > 1 && (
            <p>
              {sayList(
                blend.parts.map(({ id, fraction }) =>
                  say('{percent} % {water}', { percent: sayNumber(100 * fraction, 0), water: lowerFirst(nameOf(id)) }),
                ),
              )}
              .
            </p>
          )}
          <dl class="pairs">
            {minerals.map((mineral) => (
              <>
                <dt>{say(mineralNames[mineral].word)}</dt>
                <dd>{blend[mineral] === null ? say('not known') : sayAmount(blend[mineral], mineral)}</dd>
              </>
            ))}
            {blend.costPerLitre !== null && blend.cost !== null && (
              <>
                <dt>{say('price')}</dt>
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
  const blanks = {
    mineral: say(mineralNames[mineral].name),
    limit: sayAmount(limit * cycles, mineral),
    reach: sayAmount(reach * cycles, mineral),
  }
  if (end === 'low') {
    return isOneOfMany
      ? say('{mineral} at least {limit}: while the others hold, these waters come to {reach} at the nearest.', blanks)
      : say('{mineral} at least {limit}: these waters come to {reach} at the nearest.', blanks)
  }
  return isOneOfMany
    ? say('{mineral} at most {limit}: while the others hold, these waters come to {reach} at the nearest.', blanks)
    : say('{mineral} at most {limit}: these waters come to {reach} at the nearest.', blanks)
}

function sayLimits(limits: MineralLimits, cycles: number): string {
  const parts = minerals.flatMap((mineral): string[] => {
    const { low, high } = limits[mineral] ?? {}
    const word = say(mineralNames[mineral].word)
    if (low !== undefined && high !== undefined) {
      return [
        say('{mineral} at least {low} and at most {high}', {
          mineral: word,
          low: sayAmount(low, mineral),
          high: sayAmount(high, mineral),
        }),
      ]
    }
    if (low !== undefined) return [say('{mineral} at least {low}', { mineral: word, low: sayAmount(low, mineral) })]
    if (high !== undefined) return [say('{mineral} at most {high}', { mineral: word, high: sayAmount(high, mineral) })]
    return []
  })
  return parts.length === 0
    ? say('No limit is typed.')
    : say('At {cycles} cycles the water may hold {limits}.', {
        cycles: sayNumber(cycles, 1, {}, 0),
        limits: sayList(parts),
      })
}

function blendWater({ id, values }: WaterRead, book: Book): BlendWater {
  const kind = book.waters.find((water) => water.id === id)?.kind as PourableWater['kind']
  const known = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== null))
  return { id, kind, ...known }
}
