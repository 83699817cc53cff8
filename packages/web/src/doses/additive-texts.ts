import { type AdditiveKind, type LabelUnit, message, say, sayNumber } from '@sumpbook/fluid'
import type { SmallField, SmallTexts, SmallValues } from '../stock/form-fields.ts'

/** An additive as the book keeps it. */
export interface AdditiveThing {
  id: string
  name: string
  kind: AdditiveKind
  dose?: { low: number; high: number; unit: LabelUnit }
  minimumDays?: number
  most?: { amount: number; days: number }
  label?: string
  contains?: string[]
  who?: 'keeper' | 'owner'
}

type Words = readonly (readonly [value: string, words: string])[]
/** Words as they are said just now. */
const saidOf = (table: Words): Words => table.map(([value, words]) => [value, say(words)])

const kinds: readonly (readonly [AdditiveKind, string])[] = [
  ['biocide', message('biocide')],
  ['fungicide', message('fungicide')],
  ['ph', message('for the pH')],
  ['defoamer', message('against foam')],
  ['corrosion', message('against rust')],
  ['other', message('something else')],
]
export const sayAdditiveKind = (kind: AdditiveKind): string => say(kinds.find(([id]) => id === kind)?.[1] ?? kind)

const units: readonly (readonly [LabelUnit, string])[] = [
  ['mL/L', message('mL in a litre of mix')],
  ['L/1000 L', message('litres in 1000 litres')],
  ['%', message('percent by volume')],
  ['fl oz/gal', message('fluid ounces in a US gallon')],
  ['g/L', message('grams in a litre')],
  ['mg/L', message('mg in a litre (ppm)')],
]
const containing = [
  ['', message('neither that is known')],
  ['nitrite', message('nitrite')],
  ['amines', message('amines')],
  ['nitrite amines', message('both')],
] as const
const givers = [
  ['keeper', message('keepers and owners')],
  ['owner', message('owners only')],
] as const

/** What is asked of a label; its figures are those of the label in the user's hand, and none is proposed. */
export const additiveFields = (): readonly SmallField[] => [
  { key: 'name', label: say('Name'), kind: 'text', required: true },
  { key: 'kind', label: say('What it is for'), kind: 'choice', required: true, choices: saidOf(kinds) },
  { key: 'low', label: say('Least dose, as its label has it'), kind: 'number', least: 0 },
  { key: 'high', label: say('Most in one dose'), kind: 'number' },
  { key: 'unit', label: say('Both in'), kind: 'choice', choices: saidOf(units) },
  {
    key: 'minimumDays',
    label: say('Days between two doses'),
    kind: 'number',
    most: 3660,
    hint: say('Empty where its label says nothing'),
  },
  { key: 'mostAmount', label: say('Most within some days, all doses together'), kind: 'number' },
  { key: 'mostDays', label: say('Within how many days'), kind: 'number', most: 3660 },
  { key: 'label', label: say('Which label, of when, where on it'), kind: 'text' },
  { key: 'contains', label: say('It contains'), kind: 'choice', choices: saidOf(containing) },
  { key: 'who', label: say('Who may give it'), kind: 'choice', choices: saidOf(givers) },
]

const text = (value: number | undefined) => (value === undefined ? '' : String(value))

export const additiveTexts = (one: AdditiveThing | null): SmallTexts => ({
  name: one?.name ?? '',
  kind: one?.kind ?? 'biocide',
  low: text(one?.dose?.low),
  high: text(one?.dose?.high),
  unit: one?.dose?.unit ?? 'mL/L',
  minimumDays: text(one?.minimumDays),
  mostAmount: text(one?.most?.amount),
  mostDays: text(one?.most?.days),
  label: one?.label ?? '',
  contains: (one?.contains ?? []).toSorted().reverse().join(' '),
  who: one?.who ?? 'keeper',
})

/** A figure of a label as it was typed, in the reader's signs. */
export const figure = (value: number): string => sayNumber(value, 6, {}, 0)

/** What is wrong with a label as a whole; null where nothing is. */
export function labelFault({ numbers }: SmallValues): string | null {
  const { low, high, mostAmount, mostDays } = numbers
  if ((low == null) !== (high == null))
    return say('Found one end of the dose; expected both, or neither: without both there is no dose.')
  if (low != null && high != null && high < low)
    return say('Found at most {high}, at least {low}; expected the most not below the least.', {
      high: figure(high),
      low: figure(low),
    })
  if ((mostAmount == null) !== (mostDays == null))
    return say('Found half of the most within some days; expected the amount and the days, or neither.')
  if (mostAmount != null && high == null)
    return say('Found a most within some days without a dose; expected the dose of its label too.')
  if (mostAmount != null && high != null && mostAmount < high) {
    return say('Found {most} within all those days and {high} in one dose; expected no less than one dose.', {
      most: figure(mostAmount),
      high: figure(high),
    })
  }
  return null
}

/** The additive that a form has become. */
export function additiveFrom({ numbers, texts }: SmallValues, id: string): AdditiveThing {
  const { low, high, minimumDays, mostAmount, mostDays } = numbers
  const contains = (texts.contains ?? '').split(' ').filter((word) => word !== '')
  return {
    id,
    name: texts.name ?? '',
    kind: (texts.kind ?? 'other') as AdditiveKind,
    ...(low == null || high == null ? {} : { dose: { low, high, unit: (texts.unit ?? 'mL/L') as LabelUnit } }),
    ...(minimumDays == null ? {} : { minimumDays }),
    ...(mostAmount == null || mostDays == null ? {} : { most: { amount: mostAmount, days: mostDays } }),
    ...(texts.label == null ? {} : { label: texts.label }),
    ...(contains.length === 0 ? {} : { contains }),
    ...(texts.who === 'owner' ? { who: 'owner' as const } : {}),
  }
}
