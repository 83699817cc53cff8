import { sayVolume } from '@sumpbook/fluid'
import type { Entry, Thing, Units } from '../api/types.ts'
import { fieldFigure, fieldVolume, readerOf } from '../say/units.ts'
import { changeOf, type Texts } from '../shop/thing-fields.ts'
import type { FluidStock } from './answers.ts'
import type { SmallField } from './form-fields.ts'
import { SmallForm } from './small-form.tsx'
import { countedOf, drumsOf, subjectEntry, thingEntry } from './stock-entries.ts'

export type StockAct = 'receive' | 'issue' | 'count' | 'order' | 'settings'

interface StockFormProps {
  act: StockAct
  stock: FluidStock
  /** As the book keeps it; undefined where the book does not know the fluid. */
  fluid: Thing | undefined
  units: Units
  today: string
  isBusy: boolean
  write(entries: Entry[]): void
  cancel(): void
}

const drums: SmallField[] = [
  { key: 'drums', label: 'Drums', kind: 'number', required: true },
  { key: 'size', label: 'Each of', kind: 'volume', required: true },
]
const day: SmallField = { key: 'on', label: 'On', kind: 'day', required: true }
const note: SmallField = { key: 'note', label: 'Note', kind: 'text' }

/** What is written about one fluid's stock. */
export function StockForm(props: StockFormProps) {
  const { act, stock, units, today, isBusy, write, cancel } = props
  const subject = { about: { kind: 'stock' as const, id: stock.fluid }, today }
  const size = fieldVolume(stock.settings.packSize.value, units)
  const lots = stock.lots.flatMap(({ lot }) => (lot === null ? [] : [lot]))
  const shared = { units, today, isBusy, write, cancel }
  const lotChoices: SmallField = {
    key: 'lot',
    label: 'Lot',
    kind: 'text',
    list: lots,
    hint: 'Empty: the one that expires soonest',
  }
  switch (act) {
    case 'receive':
      return (
        <SmallForm
          {...shared}
          title={`${stock.name} received`}
          submitWords="Received"
          first={{ drums: '', size, on: today, seal: 'whole' }}
          fields={[
            ...drums,
            { key: 'lot', label: 'Lot', kind: 'text', hint: 'As on the drum' },
            { key: 'made', label: 'Made on', kind: 'day', hint: 'Its shelf life runs from then' },
            {
              key: 'seal',
              label: 'Seal',
              kind: 'choice',
              choices: [
                ['whole', 'whole'],
                ['broken', 'broken or none'],
                ['', 'not looked at'],
              ],
            },
            day,
            note,
          ]}
          fault={(values) =>
            values.texts.made != null && values.texts.on != null && values.texts.made > values.texts.on
              ? 'Found a day of making after the day it came; expected one before.'
              : null
          }
          build={(values, stamp) => [
            subjectEntry(
              'receipt',
              subject,
              {
                fluid: stock.fluid,
                lot: values.texts.lot,
                litres: drumsOf(values),
                made: values.texts.made,
                seal: values.texts.seal,
              },
              values,
              stamp,
            ),
          ]}
        />
      )
    case 'issue':
      return (
        <SmallForm
          {...shared}
          title={`${stock.name} issued`}
          submitWords="Issued"
          first={{ drums: '1', size, on: today }}
          fields={[...drums, lotChoices, day, note]}
          doubt={(values) => {
            const litres = drumsOf(values) ?? 0
            return litres > stock.litres
              ? `The book knows of ${sayVolume(stock.litres, readerOf(units))} only. If a delivery is not written down yet, write that as well.`
              : null
          }}
          build={(values, stamp) => [
            subjectEntry(
              'issue',
              subject,
              { fluid: stock.fluid, lot: values.texts.lot, litres: drumsOf(values) },
              values,
              stamp,
            ),
          ]}
        />
      )
    case 'count':
      return (
        <SmallForm
          {...shared}
          title={`${stock.name} counted`}
          submitWords="Counted"
          first={{ drums: '', size, rest: '', on: today }}
          fields={[
            { key: 'drums', label: 'Full drums', kind: 'number', least: 0 },
            { key: 'size', label: 'Each of', kind: 'volume' },
            { key: 'rest', label: 'Left in open ones', kind: 'volume', least: 0 },
            { ...lotChoices, hint: 'Empty: all lots together' },
            day,
            note,
          ]}
          fault={(values) =>
            countedOf(values) === null ? 'Found nothing; expected drums, or what is left in open ones.' : null
          }
          build={(values, stamp) => [
            subjectEntry('check', subject, { found: countedOf(values), lot: values.texts.lot }, values, stamp),
          ]}
        />
      )
    case 'order':
      return (
        <SmallForm
          {...shared}
          title={`${stock.name} ordered`}
          submitWords="Ordered"
          first={{ drums: stock.order === null ? '' : String(stock.order.packs), size, on: today, expectedOn: '' }}
          fields={[
            ...drums,
            { key: 'expectedOn', label: 'Expected on', kind: 'day', hint: 'Empty: after the usual wait' },
            day,
            note,
          ]}
          build={(values, stamp) => [
            subjectEntry(
              'order',
              subject,
              { fluid: stock.fluid, litres: drumsOf(values), expectedOn: values.texts.expectedOn },
              values,
              stamp,
            ),
          ]}
        />
      )
    case 'settings':
      return <SettingsForm {...props} />
  }
}

const settingFields: SmallField[] = [
  { key: 'packSize', label: 'Drum', kind: 'volume', hint: 'Empty: the usual drum' },
  { key: 'leadDays', label: 'Days from order to delivery', kind: 'number', least: 0, hint: 'Empty: 7' },
  { key: 'leadSd', label: 'Give or take, days', kind: 'number', least: 0, hint: 'Empty: 3' },
  { key: 'service', label: 'Chance of not running out, %', kind: 'number', least: 50, most: 99.9, hint: 'Empty: 95' },
  { key: 'orderCost', label: 'An order costs', kind: 'number', least: 0, hint: 'Money, whatever its size' },
  { key: 'holdingPercent', label: 'A year in store, % of the price', kind: 'number', least: 0, hint: 'Empty: 20' },
  { key: 'pricePerLitre', label: 'Price of a litre', kind: 'number', least: 0 },
  { key: 'shelfLifeDays', label: 'Shelf life, days from making', kind: 'number', least: 0 },
  { key: 'openedDays', label: 'An opened drum keeps, days', kind: 'number', least: 0 },
  {
    key: 'usedBy',
    label: 'What counts as used',
    kind: 'choice',
    choices: [
      ['', 'issues where there are any, else pours'],
      ['issues', 'drums issued'],
      ['pours', 'what is poured'],
    ],
  },
]
/** The rest are fields of `stock`. */
const ofFluid = new Set(['pricePerLitre', 'shelfLifeDays'])
const pathOf = (key: string) => (ofFluid.has(key) ? key : `stock.${key}`)

/** By what a fluid's orders are reckoned: fields of the fluid, changed by a set-up entry from now on. */
function SettingsForm({ stock, fluid, units, today, isBusy, write, cancel }: StockFormProps) {
  if (fluid === undefined) {
    return <p>The book does not know this fluid yet: add it under Shop, then its orders can be reckoned.</p>
  }
  const first = textsOf(fluid, units)
  return (
    <SmallForm
      title={`Settings of ${stock.name}`}
      submitWords="Save"
      fields={settingFields}
      first={first}
      {...{ units, today, isBusy, cancel }}
      write={(entries) => (entries.length === 0 ? cancel() : write(entries))}
      build={({ numbers, texts }, stamp) => {
        const values = Object.fromEntries(
          settingFields.map(({ key, kind }) => [pathOf(key), kind === 'choice' ? texts[key] : numbers[key]]),
        )
        const change = changeOf(fluid, values)
        return change === null
          ? []
          : [thingEntry({ kind: 'fluid', id: stock.fluid }, change.changes, change.was, stamp)]
      }}
    />
  )
}

function textsOf(fluid: Thing, units: Units): Texts {
  const kept = { ...(fluid.stock as Record<string, unknown> | undefined), ...fluid } as Record<string, unknown>
  return Object.fromEntries(
    settingFields.map(({ key, kind }) => {
      const value = kept[key]
      if (typeof value === 'string') return [key, value]
      if (typeof value !== 'number') return [key, '']
      return [key, kind === 'volume' ? fieldVolume(value, units) : fieldFigure(value)]
    }),
  )
}
