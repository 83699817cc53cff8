import { litresFrom, message, say } from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'
import type { FieldRead } from '../fields/read.ts'
import { readPlain } from '../fields/read.ts'
import { fieldFigure, shopUnits } from '../say/units.ts'
import type { Cost } from './cost-api.ts'

/** One figure of the shop's own that costs rest on. */
export interface OwnFigure {
  /** Of the costs: a field, or a stream or additive by its name. */
  key: string
  label: string
  hint: string
  /** As the book keeps it; null where it is not set. */
  value: number | null
  /** A price a litre: typed for the shop's unit of volume. */
  perVolume: boolean
}

const words: Record<Cost['assumptions'][number]['figure'], { label: string; hint: string; perVolume?: true }> = {
  labourPerHour: { label: message('Work, {money} an hour'), hint: message('Of whoever looks after the coolant') },
  minutesPerStop: { label: message('A stop on a round, minutes'), hint: message('At one sump, whatever is entered') },
  machinePerHour: { label: message('A machine that stands, {money} an hour'), hint: message('Counted at cleanouts') },
  cleanerPerLitre: {
    label: message('System cleaner, {money} per {volume}'),
    hint: message('Counted at cleanouts'),
    perVolume: true,
  },
  wastePerLitre: {
    label: message('Waste, {money} per {volume}'),
    hint: message('Streams without a price of their own'),
    perVolume: true,
  },
  wastePerPickup: { label: message('Each pickup, {money}'), hint: message('Whatever it takes along') },
  leanPerDay: {
    label: message('A day under the band, {money}'),
    hint: message('Rework and shorter life, by your own experience'),
  },
}
const order = Object.keys(words) as (keyof typeof words)[]

/** Every figure of the shop's own, with what it is now. */
export function ownFigures({ assumptions, prices, currency }: Cost, units: Units): OwnFigure[] {
  const per = { money: currency, volume: shopUnits[units].volumeWord }
  const plain = order.map((figure): OwnFigure => {
    const { label, hint, perVolume = false } = words[figure]
    const value = assumptions.find((one) => one.figure === figure)?.value ?? null
    return { key: figure, label: say(label, per), hint: say(hint), value, perVolume }
  })
  const named = (kind: 'stream' | 'additive', hint: string, list: Cost['prices']['streams']) =>
    list.map(
      ({ name, perLitre }): OwnFigure => ({
        key: `${kind}:${name}`,
        label: say('{name}, {money} per {volume}', { name, ...per }),
        hint,
        value: perLitre,
        perVolume: true,
      }),
    )
  return [
    ...plain,
    ...named('stream', say('Instead of the price for waste'), prices.streams),
    ...named('additive', say('Additive'), prices.additives),
  ]
}

/** As it stands in its field. */
export function figureText({ value, perVolume }: OwnFigure, units: Units): string {
  if (value === null) return ''
  return fieldFigure(perVolume ? value * litresFrom(1, shopUnits[units].volume) : value)
}

/** A figure as typed: money or minutes, for the shop's unit of volume where it is a price. */
export function readFigure(text: string, { key, perVolume }: OwnFigure, units: Units): FieldRead {
  const read = readPlain(text, key === 'minutesPerStop' ? { min: 0, max: 1440 } : { min: 0 })
  if ('fault' in read || read.value === null || !perVolume) return read
  return { value: read.value / litresFrom(1, shopUnits[units].volume) }
}

type Values = Readonly<Record<string, number | null>>

/** The costs that a set-up changes: only figures that are other than they were; null where nothing is. */
export function changedCosts(
  figures: readonly OwnFigure[],
  values: Values,
): { changes: Record<string, unknown>; was: Record<string, unknown> | null; isFirst: boolean } | null {
  const changed = figures.filter(({ key, value }) => (values[key] ?? null) !== value)
  if (changed.length === 0) return null
  const changes: Record<string, unknown> = {}
  const was: Record<string, unknown> = {}
  for (const { key, value } of changed.filter(({ key }) => !key.includes(':'))) {
    changes[key] = values[key] ?? null
    if (value !== null) was[key] = value
  }
  for (const [kind, field, name] of [
    ['stream', 'wasteStreams', 'stream'],
    ['additive', 'additives', 'name'],
  ] as const) {
    const own = figures.filter(({ key }) => key.startsWith(`${kind}:`))
    if (!own.some((figure) => changed.includes(figure))) continue
    const listOf = (of: (figure: OwnFigure) => number | null) =>
      own.flatMap((figure) => {
        const perLitre = of(figure)
        return perLitre === null ? [] : [{ [name]: figure.key.slice(kind.length + 1), perLitre }]
      })
    changes[field] = listOf(({ key }) => values[key] ?? null)
    const before = listOf(({ value }) => value)
    if (before.length > 0) was[field] = before
  }
  return {
    changes: { costs: changes },
    was: Object.keys(was).length === 0 ? null : { costs: was },
    isFirst: changed.every(({ value }) => value === null),
  }
}
