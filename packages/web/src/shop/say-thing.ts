import { litresTo, message, say, sayNumber } from '@sumpbook/fluid'
import type { Book, Thing, Units } from '../api/types.ts'
import { shopUnits } from '../say/units.ts'
import type { FormKind } from './all-fields.ts'
import { padsText } from './list-fields.ts'

/** Kinds of fluids, waters and instruments, before they are said. */
const kindWords: Readonly<Record<string, string>> = {
  'soluble-oil': message('soluble oil'),
  'semi-synthetic': message('semi-synthetic'),
  synthetic: message('synthetic'),
  'straight-oil': message('straight oil'),
  tap: message('tap'),
  well: message('well'),
  softened: message('softened'),
  'reverse-osmosis': message('reverse osmosis'),
  deionised: message('deionised'),
  refractometer: message('refractometer'),
  strip: message('strips'),
  'strip-ph': message('pH strips'),
  'strip-nitrite': message('nitrite strips'),
  'strip-hardness': message('hardness strips'),
  'ph-meter': message('pH meter'),
  'dip-slide': message('dip slides'),
}

/** A thing in a few words, what is not known left out: "Blue 40 · mark 300 L · bay C · 6–10 %, target 8 %". */
export function sayThing(
  kind: FormKind,
  thing: Thing,
  { shop: { units }, fluids, sumpList = [] }: { shop: { units: Units } } & Pick<Book, 'fluids' | 'sumpList'>,
): string {
  const parts: Record<FormKind, () => string[]> = {
    sump: () => [
      fluids.find(({ id }) => id === thing.fluid)?.name ?? '',
      ifNumber(thing.fillVolume, (litres) => say('mark {volume}', { volume: volume(litres, units) })),
      typeof thing.place === 'string' ? thing.place : '',
      sayKept(thing),
    ],
    fluid: () => [
      sayKind(thing.class),
      thing.brixChart === undefined
        ? ifNumber(thing.brixFactor, (factor) => say('factor {factor}', { factor: figure(factor, 4) }))
        : say('by its chart'),
      sayKept(thing),
    ],
    water: () => [sayKind(thing.kind), ifNumber(thing.hardness, (hardness) => `${figure(hardness, 2)} ppm`)],
    container: () => [
      ifNumber(thing.capacity, (litres) => volume(litres, units)),
      ifNumber(thing.graduation, (litres) => say('marks every {volume}', { volume: volume(litres, units) })),
    ],
    instrument: () => [
      sayKind(thing.kind),
      Array.isArray(thing.pads) ? say('pads {pads}', { pads: padsText(thing.pads as number[]) }) : '',
      ifNumber(thing.resolution, (step) => say('steps of {step}', { step: figure(step, 2) })),
    ],
    meter: () => [
      ifNumber(thing.litresPerCount, (litres) => say('{volume} a count', { volume: volume(litres, units) })),
      sumpList.find(({ id }) => id === thing.sump)?.name ?? '',
      typeof thing.place === 'string' ? thing.place : '',
    ],
  }
  return parts[kind]()
    .filter((part) => part !== '')
    .join(' · ')
}

const figure = (value: number, decimals: number) => sayNumber(value, decimals, {}, 0)

function sayKind(kind: unknown): string {
  if (typeof kind !== 'string') return ''
  const words = kindWords[kind]
  return words === undefined ? kind : say(words)
}

/** As much of a band as is known of the thing itself; another end may be its fluid's. */
function sayKept({ limits }: Thing): string {
  const { low, target, high } = (limits as { concentration?: Record<string, unknown> } | undefined)?.concentration ?? {}
  if (typeof low !== 'number' || typeof high !== 'number') return ''
  const ends = { low: figure(low, 2), high: figure(high, 2) }
  return typeof target === 'number'
    ? say('{low}–{high} %, target {target} %', { ...ends, target: figure(target, 2) })
    : `${ends.low}–${ends.high} %`
}

const ifNumber = (value: unknown, words: (value: number) => string) => (typeof value === 'number' ? words(value) : '')

/** As exact as it was typed: to the hundredth of the shop's unit, large ones to the tenth, the count of a meter finer. */
function volume(litres: number, units: Units): string {
  const amount = litresTo(litres, shopUnits[units].volume)
  return `${figure(amount, amount >= 100 ? 1 : amount >= 0.1 ? 2 : 4)} ${shopUnits[units].volumeWord}`
}
