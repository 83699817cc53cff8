import { say, sayNumber, sayVolume } from '@sumpbook/fluid'
import type { Entry, Thing, Units } from '../api/types.ts'
import { fieldFigure, fieldVolume, readerOf } from '../say/units.ts'
import { changeOf } from '../shop/change-of.ts'
import type { Texts } from '../shop/thing-field.ts'
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

const drumFields = (): SmallField[] => [
  { key: 'drums', label: say('Drums'), kind: 'number', required: true },
  { key: 'size', label: say('Each of'), kind: 'volume', required: true },
]
/** On which day it was, and what else there is to say. */
const lastFields = (): SmallField[] => [
  { key: 'on', label: say('On'), kind: 'day', required: true },
  { key: 'note', label: say('Note'), kind: 'text' },
]

/** What is written about one fluid's stock. */
export function StockForm(props: StockFormProps) {
  const { act, stock, units, today, isBusy, write, cancel } = props
  const subject = { about: { kind: 'stock' as const, id: stock.fluid }, today }
  const size = fieldVolume(stock.settings.packSize.value, units)
  const lots = stock.lots.flatMap(({ lot }) => (lot === null ? [] : [lot]))
  const shared = { units, today, isBusy, write, cancel }
  const drums = drumFields()
  const last = lastFields()
  const lotChoices: SmallField = {
    key: 'lot',
    label: say('Lot'),
    kind: 'text',
    list: lots,
    hint: say('Empty: the one that expires soonest'),
  }
  switch (act) {
    case 'receive':
      return (
        <SmallForm
          {...shared}
          title={say('{fluid} received', { fluid: stock.name })}
          submitWords={say('Received')}
          first={{ drums: '', size, on: today, seal: 'whole' }}
          fields={[
            ...drums,
            { key: 'lot', label: say('Lot'), kind: 'text', hint: say('As on the drum') },
            { key: 'made', label: say('Made on'), kind: 'day', hint: say('Its shelf life runs from then') },
            {
              key: 'seal',
              label: say('Seal'),
              kind: 'choice',
              choices: [
                ['whole', say('whole')],
                ['broken', say('broken or none')],
                ['', say('not looked at')],
              ],
            },
            ...last,
          ]}
          fault={(values) =>
            values.texts.made != null && values.texts.on != null && values.texts.made > values.texts.on
              ? say('Found a day of making after the day it came; expected one before.')
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
          title={say('{fluid} issued', { fluid: stock.name })}
          submitWords={say('Issued')}
          first={{ drums: '1', size, on: today }}
          fields={[...drums, lotChoices, ...last]}
          doubt={(values) => {
            const litres = drumsOf(values) ?? 0
            return litres > stock.litres
              ? say('The book knows of {volume} only. If a delivery is not written down yet, write that as well.', {
                  volume: sayVolume(stock.litres, readerOf(units)),
                })
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
          title={say('{fluid} counted', { fluid: stock.name })}
          submitWords={say('Counted')}
          first={{ drums: '', size, rest: '', on: today }}
          fields={[
            { key: 'drums', label: say('Full drums'), kind: 'number', least: 0 },
            { key: 'size', label: say('Each of'), kind: 'volume' },
            { key: 'rest', label: say('Left in open ones'), kind: 'volume', least: 0 },
            { ...lotChoices, hint: say('Empty: all lots together') },
            ...last,
          ]}
          fault={(values) =>
            countedOf(values) === null ? say('Found nothing; expected drums, or what is left in open ones.') : null
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
          title={say('{fluid} ordered', { fluid: stock.name })}
          submitWords={say('Ordered')}
          first={{ drums: stock.order === null ? '' : String(stock.order.packs), size, on: today, expectedOn: '' }}
          fields={[
            ...drums,
            { key: 'expectedOn', label: say('Expected on'), kind: 'day', hint: say('Empty: after the usual wait') },
            ...last,
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

const settingFields = (): SmallField[] => [
  { key: 'packSize', label: say('Drum'), kind: 'volume', hint: say('Empty: the usual drum') },
  { key: 'leadDays', label: say('Days from order to delivery'), kind: 'number', least: 0, hint: usually(7) },
  { key: 'leadSd', label: say('Give or take, days'), kind: 'number', least: 0, hint: usually(3) },
  {
    key: 'service',
    label: say('Chance of not running out, %'),
    kind: 'number',
    least: 50,
    most: 99.9,
    hint: usually(95),
  },
  { key: 'orderCost', label: say('An order costs'), kind: 'number', least: 0, hint: say('Money, whatever its size') },
  { key: 'holdingPercent', label: say('A year in store, % of the price'), kind: 'number', least: 0, hint: usually(20) },
  { key: 'pricePerLitre', label: say('Price of a litre'), kind: 'number', least: 0 },
  { key: 'shelfLifeDays', label: say('Shelf life, days from making'), kind: 'number', least: 0 },
  { key: 'openedDays', label: say('An opened drum keeps, days'), kind: 'number', least: 0 },
  {
    key: 'usedBy',
    label: say('What counts as used'),
    kind: 'choice',
    choices: [
      ['', say('issues where there are any, else pours')],
      ['issues', say('drums issued')],
      ['pours', say('what is poured')],
    ],
  },
]
/** What is reckoned with where a field is empty. */
const usually = (value: number): string => say('Empty: {value}', { value: sayNumber(value, 0) })

/** The rest are fields of `stock`. */
const ofFluid = new Set(['pricePerLitre', 'shelfLifeDays'])
const pathOf = (key: string) => (ofFluid.has(key) ? key : `stock.${key}`)

/** By what a fluid's orders are reckoned: fields of the fluid, changed by a set-up entry from now on. */
function SettingsForm({ stock, fluid, units, today, isBusy, write, cancel }: StockFormProps) {
  if (fluid === undefined) {
    return <p>{say('The book does not know this fluid yet: add it under Shop, then its orders can be reckoned.')}</p>
  }
  const fields = settingFields()
  const first = textsOf(fields, fluid, units)
  return (
    <SmallForm
      title={say('Settings of {name}', { name: stock.name })}
      submitWords={say('Save')}
      fields={fields}
      first={first}
      {...{ units, today, isBusy, cancel }}
      write={(entries) => (entries.length === 0 ? cancel() : write(entries))}
      build={({ numbers, texts }, stamp) => {
        const values = Object.fromEntries(
          fields.map(({ key, kind }) => [pathOf(key), kind === 'choice' ? texts[key] : numbers[key]]),
        )
        const change = changeOf(fluid, values)
        return change === null
          ? []
          : [thingEntry({ kind: 'fluid', id: stock.fluid }, change.changes, change.was, stamp)]
      }}
    />
  )
}

function textsOf(fields: readonly SmallField[], fluid: Thing, units: Units): Texts {
  const kept = { ...(fluid.stock as Record<string, unknown> | undefined), ...fluid } as Record<string, unknown>
  return Object.fromEntries(
    fields.map(({ key, kind }) => {
      const value = kept[key]
      if (typeof value === 'string') return [key, value]
      if (typeof value !== 'number') return [key, '']
      return [key, kind === 'volume' ? fieldVolume(value, units) : fieldFigure(value)]
    }),
  )
}
