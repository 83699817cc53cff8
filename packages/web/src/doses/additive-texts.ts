import type { AdditiveKind, LabelUnit } from '@sumpbook/fluid'
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

export const kindWords: readonly (readonly [AdditiveKind, string])[] = [
  ['biocide', 'biocide'],
  ['fungicide', 'fungicide'],
  ['ph', 'for the pH'],
  ['defoamer', 'against foam'],
  ['corrosion', 'against rust'],
  ['other', 'something else'],
]

const units: readonly (readonly [LabelUnit, string])[] = [
  ['mL/L', 'mL in a litre of mix'],
  ['L/1000 L', 'litres in 1000 litres'],
  ['%', 'percent by volume'],
  ['fl oz/gal', 'fluid ounces in a US gallon'],
  ['g/L', 'grams in a litre'],
  ['mg/L', 'mg in a litre (ppm)'],
]
const containing = [
  ['', 'neither that is known'],
  ['nitrite', 'nitrite'],
  ['amines', 'amines'],
  ['nitrite amines', 'both'],
] as const

/** What is asked of a label; its figures are those of the label in the user's hand, and none is proposed. */
export const additiveFields: readonly SmallField[] = [
  { key: 'name', label: 'Name', kind: 'text', required: true },
  { key: 'kind', label: 'What it is for', kind: 'choice', required: true, choices: kindWords },
  { key: 'low', label: 'Least dose, as its label has it', kind: 'number', least: 0 },
  { key: 'high', label: 'Most in one dose', kind: 'number' },
  { key: 'unit', label: 'Both in', kind: 'choice', choices: units },
  {
    key: 'minimumDays',
    label: 'Days between two doses',
    kind: 'number',
    most: 3660,
    hint: 'Empty where its label says nothing',
  },
  { key: 'mostAmount', label: 'Most within some days, all doses together', kind: 'number' },
  { key: 'mostDays', label: 'Within how many days', kind: 'number', most: 3660 },
  { key: 'label', label: 'Which label, of when, where on it', kind: 'text' },
  { key: 'contains', label: 'It contains', kind: 'choice', choices: containing },
  {
    key: 'who',
    label: 'Who may give it',
    kind: 'choice',
    choices: [
      ['keeper', 'keepers and owners'],
      ['owner', 'owners only'],
    ],
  },
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

/** What is wrong with a label as a whole; null where nothing is. */
export function labelFault({ numbers }: SmallValues): string | null {
  const { low, high, mostAmount, mostDays } = numbers
  if ((low == null) !== (high == null))
    return 'Found one end of the dose; expected both, or neither: without both there is no dose.'
  if (low != null && high != null && high < low)
    return `Found at most ${high}, at least ${low}; expected the most not below the least.`
  if ((mostAmount == null) !== (mostDays == null))
    return 'Found half of the most within some days; expected the amount and the days, or neither.'
  if (mostAmount != null && high == null)
    return 'Found a most within some days without a dose; expected the dose of its label too.'
  if (mostAmount != null && high != null && mostAmount < high) {
    return `Found ${mostAmount} within all those days and ${high} in one dose; expected no less than one dose.`
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
