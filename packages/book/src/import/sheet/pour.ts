import { say, sayPercent } from '@sumpbook/fluid'
import type { Fault } from '../../errors.ts'
import type { NumberField } from './fields.ts'
import type { Measure } from './measures.ts'

/** What a row says was poured. Zero is nothing poured. */
export type Pour =
  | { outcome: 'nothing' }
  /** A strength without an amount. */
  | { outcome: 'no-amount' }
  | {
      outcome: 'pour'
      fields: { volume?: number; strength?: number; concentrate?: number; toMark?: true }
      typed: Record<string, string>
    }
  | { outcome: 'fault'; fault: Pick<Fault, 'found' | 'expected'>; of: Measure }

export type Measures = ReadonlyMap<NumberField, Measure>

/** How far the parts may differ from the whole before they are two different pours: people round to a tenth of a gallon. */
const rounding = 0.02

/**
 * The addition that a row's columns describe: mix and its strength as they stand; concentrate and water become
 *
 *     volume = concentrate + water        strength = 100 × concentrate / volume
 *
 * and stay beside it as typed. Concentrate with the strength of the mix is `volume = 100 × concentrate / strength`. Concentrate
 * alone stays concentrate, water alone is mix of strength 0. Amounts that contradict each other are a fault.
 */
export function pourOf(measures: Measures, toMark: string | null): Pour {
  const faulty = (['added', 'addedStrength', 'addedConcentrate', 'addedWater'] as const)
    .map((field) => measures.get(field))
    .find((one) => one !== undefined && typeof one.value !== 'number')
  if (faulty !== undefined)
    return {
      outcome: 'fault',
      of: faulty,
      fault: { found: JSON.stringify(faulty.typed), expected: say('one amount, not a class') },
    }
  const amount = (field: NumberField) => (measures.get(field)?.value as number | undefined) ?? 0
  const [mix, concentrate, water] = [amount('added'), amount('addedConcentrate'), amount('addedWater')]
  const strength = measures.get('addedStrength')?.value as number | undefined
  if (toMark !== null) return toTheMark(measures, toMark, strength)
  if (mix === 0 && concentrate === 0 && water === 0)
    return strength !== undefined && strength > 0 ? { outcome: 'no-amount' } : { outcome: 'nothing' }
  if (concentrate === 0 && water === 0)
    return {
      outcome: 'pour',
      fields: { volume: mix, ...(strength === undefined ? {} : { strength }) },
      typed: typedOf(measures, { added: 'volume', addedStrength: 'strength' }),
    }
  return fromParts(measures, { mix, concentrate, water, strength })
}

interface Amounts {
  mix: number
  concentrate: number
  water: number
  strength: number | undefined
}

function fromParts(measures: Measures, { mix, concentrate, water, strength }: Amounts): Pour {
  const parts = concentrate + water
  const typed = typedOf(measures, {
    added: 'volume',
    addedStrength: 'strength',
    addedConcentrate: 'concentrate',
    addedWater: 'addedWater',
  })
  if (mix !== 0 && Math.abs(mix - parts) > rounding * Math.abs(mix)) {
    return contradiction(
      measures,
      'added',
      say('the concentrate and the water together, or the mix with its strength alone'),
    )
  }
  if (concentrate !== 0 && water === 0 && mix === 0) {
    if (strength === undefined)
      return { outcome: 'pour', fields: { concentrate }, typed: typedOf(measures, { addedConcentrate: 'concentrate' }) }
    if (!(strength > 0))
      return contradiction(measures, 'addedStrength', say('a strength above 0 % beside an amount of concentrate'))
    return { outcome: 'pour', fields: { volume: (100 * concentrate) / strength, strength }, typed }
  }
  const made = (100 * concentrate) / parts
  if (strength !== undefined && Math.abs(strength - made) > Math.max(0.5, 0.1 * made)) {
    return contradiction(
      measures,
      'addedStrength',
      say('the strength that the amounts give, {strength}', { strength: sayPercent(made, { units: 'metric' }) }),
    )
  }
  return { outcome: 'pour', fields: { volume: parts, strength: made }, typed }
}

/** "full", "voll": filled to the mark, the amount not measured. */
function toTheMark(measures: Measures, text: string, strength: number | undefined): Pour {
  const other = measures.get('addedConcentrate') ?? measures.get('addedWater')
  if (other !== undefined && other.value !== 0)
    return contradiction(measures, other.field, say('no amount beside "{text}" (filled to the mark)', { text }))
  return {
    outcome: 'pour',
    fields: { toMark: true, ...(strength === undefined ? {} : { strength }) },
    typed: { toMark: text, ...typedOf(measures, { addedStrength: 'strength' }) },
  }
}

function contradiction(measures: Measures, field: NumberField, expected: string): Pour {
  const of = measures.get(field)!
  return { outcome: 'fault', of, fault: { found: JSON.stringify(of.typed), expected } }
}

function typedOf(measures: Measures, names: Partial<Record<NumberField, string>>): Record<string, string> {
  return Object.fromEntries(
    (Object.entries(names) as [NumberField, string][]).flatMap(([field, name]) => {
      const measure = measures.get(field)
      return measure === undefined ? [] : [[name, measure.typed]]
    }),
  )
}

const marks = new Set([
  'full',
  'filled',
  'filled up',
  'to mark',
  'to the mark',
  'mark',
  'voll',
  'bis marke',
  'aufgefüllt',
  'aufgefuellt',
  'lleno',
  'llenado',
  'hasta la marca',
])

/** Whether the words of a cell for an amount say that the sump was filled to its mark. */
export const saysToMark = (text: string): boolean => marks.has(text.toLowerCase())
