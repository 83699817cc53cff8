import { sayNumber, sayVolume, type Treatment, type TreatmentQuestion, treatment } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Book } from '../api/types.ts'
import { SelectField } from '../fields/fields.tsx'
import { type FigureField, Figures } from '../fields/figures.tsx'
import { readerOf, sayMoney, sayPerDay, sayPricePerVolume, shopUnits } from '../say/units.ts'
import { figureOfWater } from './analyses.ts'
import { readTreatment, type TreatmentKey, type TreatmentTexts } from './treatment-texts.ts'
import { waterTexts } from './water-texts.ts'

const empty: TreatmentTexts = {
  demand: '',
  peak: '1.5',
  hardness: '',
  tds: '',
  waterPrice: '',
  makes: '',
  price: '',
  recovery: '',
  rejection: '',
  upkeep: '',
  resin: '',
  capacity: '',
  resinPrice: '',
  saving: '',
  years: '5',
}

/** A purifier for the shop's water: whether it is large enough, what its water costs, how long its resin lasts, when it has paid. */
export function TreatmentTool({ book }: { book: Book }) {
  const { units, currency } = book.shop
  const { volumeName, volumeWord } = shopUnits[units]
  const tap = book.waters.find(({ kind }) => kind === 'tap' || kind === 'well')
  const [water, setWater] = useState(tap?.id ?? '')
  const [texts, setTexts] = useState<TreatmentTexts>({ ...empty, ...tapTexts(book, tap?.id ?? '') })
  const { question, faults, missing } = readTreatment(texts, units)
  const pick = (id: string) => {
    setWater(id)
    setTexts({ ...texts, ...tapTexts(book, id) })
  }
  const group = (legend: string, fields: readonly FigureField<TreatmentKey>[], more: ComponentChildren = null) => (
    <fieldset class="tool-fields">
      <legend>{legend}</legend>
      <Figures
        fields={fields}
        texts={texts}
        faults={faults}
        change={(key, text) => setTexts({ ...texts, [key]: text })}
      >
        {more}
      </Figures>
    </fieldset>
  )
  return (
    <>
      <p class="intro">
        Every figure can be changed. What a unit or a resin does stands on its own sheet; nothing here is assumed for
        it.
      </p>
      <div class="tool">
        <div class="tool-fields">
          {group('What is used', [
            {
              key: 'demand',
              label: `Treated water a day, ${volumeName}`,
              hint: 'Evaporation and carry-off of all sumps',
            },
            { key: 'peak', label: 'Worst day, times the mean', hint: 'Empty: 1.5' },
          ])}
          {group(
            'Water that is treated',
            [
              { key: 'hardness', label: 'Its hardness, ppm as CaCO3' },
              {
                key: 'tds',
                label: 'Its dissolved solids, mg/L',
                hint: 'Empty: by its hardness, the resin lasts longer than it will',
              },
              { key: 'waterPrice', label: `Its price, ${currency} per ${volumeWord}` },
            ],
            <SelectField
              label="From the book"
              value={water}
              onInput={pick}
              choices={[['', 'none of the book'], ...book.waters.map(({ id, name }) => [id, name] as const)]}
            />,
          )}
          {group('Reverse-osmosis unit', [
            { key: 'makes', label: `It makes a day, ${volumeName}` },
            { key: 'price', label: `Its price, ${currency}` },
            { key: 'recovery', label: 'Recovery, %', hint: 'Share of the feed that becomes clean water' },
            { key: 'rejection', label: 'Rejection, %', hint: 'Share of the salts held back' },
            { key: 'upkeep', label: `Upkeep a year, ${currency}` },
          ])}
          {group('Resin behind it, or alone', [
            { key: 'resin', label: `Resin, ${volumeName}` },
            { key: 'capacity', label: 'Takes up, g CaCO3 per litre', hint: 'Of resin, from its sheet' },
            { key: 'resinPrice', label: `Price of a filling, ${currency}` },
          ])}
          {group('What it is for', [
            {
              key: 'saving',
              label: `Saved a year, ${currency}`,
              hint: 'Fluid, changes and waste that better water spares',
            },
            { key: 'years', label: 'Written off over, years', hint: 'Empty: 5' },
          ])}
        </div>
        <section class="answer" aria-label="The purifier">
          {question === null ? (
            <p role="status">
              {Object.keys(faults).length > 0
                ? 'A figure does not fit; its field says why.'
                : `It takes ${missing.join(', ').replace(/, ([^,]*)$/, ' and $1')}.`}
            </p>
          ) : (
            <Answer question={question} found={treatment(question)} book={book} />
          )}
        </section>
      </div>
    </>
  )
}

function tapTexts(book: Book, id: string): Partial<TreatmentTexts> {
  const water = book.waters.find((each) => each.id === id)
  if (water === undefined) return {}
  const { hardness, cost } = waterTexts(water, book.shop.units)
  return { hardness: figureOfWater(water, 'hardness') === null ? '' : hardness, waterPrice: cost }
}

function Answer({ question, found, book }: { question: TreatmentQuestion; found: Treatment; book: Book }) {
  const { units, currency } = book.shop
  const reader = readerOf(units)
  const { unit, polisher, demand, fluidSaving, years } = question
  const perDay = (litres: number) => sayPerDay(litres, units)
  const { capacityNeeded, enough, feed, concentrate, permeate, resinLife, costPerLitre, paybackYears, runningPerYear } =
    found
  return (
    <div role="status">
      <p class="headline">{headline(found, question, book)}</p>
      <dl class="pairs">
        <dt>The worst day takes</dt>
        <dd>
          {perDay(capacityNeeded)}
          {enough !== null && (
            <>
              ; the unit makes {perDay(unit!.litresPerDay)}:{' '}
              {enough ? 'enough' : 'too little, unless a tank carries the peaks'}
            </>
          )}
        </dd>
        {concentrate !== null && (
          <>
            <dt>Drawn from the tap</dt>
            <dd>
              {perDay(feed)}, of which {perDay(concentrate.litresPerDay)} go to the drain
              {concentrate.tds !== null && <> at {sayNumber(concentrate.tds, 0)} mg/L of salts</>}
            </dd>
            <dt>Clean water</dt>
            <dd>
              hardness {sayNumber(permeate.hardness, 1)} ppm
              {permeate.tds !== null && <>, {sayNumber(permeate.tds, 0)} mg/L of salts</>}
              {polisher !== null && ', before the resin'}
            </dd>
          </>
        )}
        {polisher !== null && (
          <>
            <dt>A filling of resin lasts</dt>
            <dd>
              {resinLife === null
                ? 'for ever: nothing is left for it'
                : `${sayVolume(resinLife, reader)}, ${sayNumber(resinLife / demand, 0)} days`}
              {question.tap.tds === null && resinLife !== null && ' at the most: by hardness alone'}
            </dd>
          </>
        )}
        <dt>Treated water costs</dt>
        <dd>
          <strong>{sayPricePerVolume(costPerLitre, { currency, units })}</strong>
          {unit !== null && <>, the unit written off over {sayNumber(years ?? 5, 1, {}, 0)} years without interest</>}
        </dd>
        <dt>Running it</dt>
        <dd>{sayMoney(runningPerYear, currency)} a year: more tap water, upkeep, resin</dd>
        <dt>Pays back</dt>
        <dd>
          {paybackYears === null
            ? fluidSaving <= runningPerYear
              ? `never: it saves ${sayMoney(fluidSaving, currency)} a year`
              : 'at once: nothing is bought'
            : `in ${sayNumber(paybackYears, 1)} years`}
        </dd>
      </dl>
    </div>
  )
}

function headline(
  { paybackYears, enough, costPerLitre }: Treatment,
  { fluidSaving }: TreatmentQuestion,
  book: Book,
): string {
  const price = sayPricePerVolume(costPerLitre, book.shop)
  if (enough === false) return `Too small for the worst day; its water costs ${price}.`
  if (paybackYears !== null) return `Paid back in ${sayNumber(paybackYears, 1)} years, at ${price}.`
  return fluidSaving === 0 ? `Treated water at ${price}.` : `It does not pay back; its water costs ${price}.`
}
