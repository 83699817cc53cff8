import { say, sayList, sayNumber, sayVolume, type Treatment, type TreatmentQuestion, treatment } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Book } from '../api/types.ts'
import { SelectField } from '../fields/fields.tsx'
import { type FigureField, Figures } from '../fields/figures.tsx'
import { Said } from '../say/said.tsx'
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
  const unit = say(volumeName)
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
        {say(
          'Every figure can be changed. What a unit or a resin does stands on its own sheet; nothing here is assumed for it.',
        )}
      </p>
      <div class="tool">
        <div class="tool-fields">
          {group(say('What is used'), [
            {
              key: 'demand',
              label: say('Treated water a day, {unit}', { unit }),
              hint: say('Evaporation and carry-off of all sumps'),
            },
            {
              key: 'peak',
              label: say('Worst day, times the mean'),
              hint: say('Empty: {value}', { value: sayNumber(1.5, 1) }),
            },
          ])}
          {group(
            say('Water that is treated'),
            [
              { key: 'hardness', label: say('Its hardness, ppm as CaCO3') },
              {
                key: 'tds',
                label: say('Its dissolved solids, mg/L'),
                hint: say('Empty: by its hardness, the resin lasts longer than it will'),
              },
              { key: 'waterPrice', label: say('Its price, {currency} per {unit}', { currency, unit: volumeWord }) },
            ],
            <SelectField
              label={say('From the book')}
              value={water}
              onInput={pick}
              choices={[['', say('none of the book')], ...book.waters.map(({ id, name }) => [id, name] as const)]}
            />,
          )}
          {group(say('Reverse-osmosis unit'), [
            { key: 'makes', label: say('It makes a day, {unit}', { unit }) },
            { key: 'price', label: say('Its price, {currency}', { currency }) },
            { key: 'recovery', label: say('Recovery, %'), hint: say('Share of the feed that becomes clean water') },
            { key: 'rejection', label: say('Rejection, %'), hint: say('Share of the salts held back') },
            { key: 'upkeep', label: say('Upkeep a year, {currency}', { currency }) },
          ])}
          {group(say('Resin behind it, or alone'), [
            { key: 'resin', label: say('Resin, {unit}', { unit }) },
            { key: 'capacity', label: say('Takes up, g CaCO3 per litre'), hint: say('Of resin, from its sheet') },
            { key: 'resinPrice', label: say('Price of a filling, {currency}', { currency }) },
          ])}
          {group(say('What it is good for'), [
            {
              key: 'saving',
              label: say('Saved a year, {currency}', { currency }),
              hint: say('Fluid, changes and waste that better water spares'),
            },
            {
              key: 'years',
              label: say('Written off over, years'),
              hint: say('Empty: {value}', { value: sayNumber(5, 0) }),
            },
          ])}
        </div>
        <section class="answer" aria-label={say('The purifier')}>
          {question === null ? (
            <p role="status">
              {Object.keys(faults).length > 0
                ? say('A figure does not fit; its field says why.')
                : say('It takes {list}.', { list: sayList(missing) })}
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
        <dt>{say('The worst day takes')}</dt>
        <dd>
          {enough === null
            ? perDay(capacityNeeded)
            : say(
                enough
                  ? '{needed}; the unit makes {makes}: enough'
                  : '{needed}; the unit makes {makes}: too little, unless a tank carries the peaks',
                { needed: perDay(capacityNeeded), makes: perDay(unit!.litresPerDay) },
              )}
        </dd>
        {concentrate !== null && (
          <>
            <dt>{say('Drawn from the tap')}</dt>
            <dd>
              {concentrate.tds === null
                ? say('{feed}, of which {drained} go to the drain', {
                    feed: perDay(feed),
                    drained: perDay(concentrate.litresPerDay),
                  })
                : say('{feed}, of which {drained} go to the drain at {salts} mg/L of salts', {
                    feed: perDay(feed),
                    drained: perDay(concentrate.litresPerDay),
                    salts: sayNumber(concentrate.tds, 0),
                  })}
            </dd>
            <dt>{say('Clean water')}</dt>
            <dd>{sayPermeate(permeate, polisher !== null)}</dd>
          </>
        )}
        {polisher !== null && (
          <>
            <dt>{say('A filling of resin lasts')}</dt>
            <dd>
              {resinLife === null
                ? say('for ever: nothing is left for it')
                : say(
                    question.tap.tds === null
                      ? '{volume}, {days} days at the most: by hardness alone'
                      : '{volume}, {days} days',
                    { volume: sayVolume(resinLife, reader), days: sayNumber(resinLife / demand, 0) },
                  )}
            </dd>
          </>
        )}
        <dt>{say('Treated water costs')}</dt>
        <dd>
          {unit === null ? (
            <strong>{sayPricePerVolume(costPerLitre, { currency, units })}</strong>
          ) : (
            <Said
              text="<strong>{price}</strong>, the unit written off over {count, plural, one {{years} year} other {{years} years}} without interest"
              values={{
                price: sayPricePerVolume(costPerLitre, { currency, units }),
                count: years ?? 5,
                years: sayNumber(years ?? 5, 1, {}, 0),
              }}
              parts={{ strong: (inside) => <strong>{inside}</strong> }}
            />
          )}
        </dd>
        <dt>{say('Running it')}</dt>
        <dd>{say('{amount} a year: more tap water, upkeep, resin', { amount: sayMoney(runningPerYear, currency) })}</dd>
        <dt>{say('Pays back')}</dt>
        <dd>
          {paybackYears !== null
            ? say('in {years} years', { years: sayNumber(paybackYears, 1) })
            : fluidSaving <= runningPerYear
              ? say('never: it saves {amount} a year', { amount: sayMoney(fluidSaving, currency) })
              : say('at once: nothing is bought')}
        </dd>
      </dl>
    </div>
  )
}

/** What the unit lets through. */
function sayPermeate({ hardness, tds }: Treatment['permeate'], isBeforeResin: boolean): string {
  const hard = sayNumber(hardness, 1)
  if (tds === null) {
    return say(isBeforeResin ? 'hardness {hardness} ppm, before the resin' : 'hardness {hardness} ppm', {
      hardness: hard,
    })
  }
  return say(
    isBeforeResin
      ? 'hardness {hardness} ppm, {salts} mg/L of salts, before the resin'
      : 'hardness {hardness} ppm, {salts} mg/L of salts',
    { hardness: hard, salts: sayNumber(tds, 0) },
  )
}

function headline(
  { paybackYears, enough, costPerLitre }: Treatment,
  { fluidSaving }: TreatmentQuestion,
  book: Book,
): string {
  const price = sayPricePerVolume(costPerLitre, book.shop)
  if (enough === false) return say('Too small for the worst day; its water costs {price}.', { price })
  if (paybackYears !== null) {
    return say('Paid back in {years} years, at {price}.', { years: sayNumber(paybackYears, 1), price })
  }
  return fluidSaving === 0
    ? say('Treated water at {price}.', { price })
    : say('It does not pay back; its water costs {price}.', { price })
}
