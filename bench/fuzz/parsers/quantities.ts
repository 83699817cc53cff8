import { readNumber, readQuantity } from '@sumpbook/fluid'
import { readCell } from '../../../packages/book/src/import/sheet/cells.ts'
import { readDateText } from '../../../packages/book/src/import/sheet/dates.ts'
import { readHeading } from '../../../packages/book/src/import/sheet/headings.ts'
import { type Dice, mutated, tokensOf } from '../mutate.ts'
import type { FuzzedParser } from '../parser.ts'

const seeds = tokensOf([
  '7,5',
  '7.5 %',
  '3.4 °Brix',
  '1:20',
  '1 in 20',
  '15 gpg',
  '60 gal',
  '1.234,5 L',
  "1'234.5",
  '10^5',
  '5×10³ CFU/mL',
  '<25',
  '25-50 ppm',
  '-3.5 °C',
  'pH 9.1',
  '12 °dH',
  '1 234,5',
  '2026-10-05 09:30',
  '5. Okt. 2026',
  '10/5/26 7:10 AM',
  'Level (gal)',
  'Härte [°dH]',
  'Mill 7 °Brix',
  'Concentrate added, US gal',
])
const tokens = tokensOf([
  '0',
  '9',
  '.',
  ',',
  '-',
  '−',
  '+',
  ' ',
  '\u00a0',
  "'",
  '’',
  'e',
  'E+',
  '^',
  'x10^',
  '×',
  '³',
  '⁰',
  '%',
  '°',
  '<',
  '>=',
  '..',
  '…',
  ' to ',
  ' bis ',
  'gal',
  'US',
  'L',
  'mm',
  '"',
  '(',
  ']',
  'ppm',
  '°dH',
  ':',
  ' in ',
  'Inf',
  'NaN',
  '\u0000',
  '\u202e',
  '٣',
  '９',
  '½',
  '9'.repeat(400),
  '0'.repeat(2000),
  '1,'.repeat(500),
  ' '.repeat(3000),
  '(('.repeat(500),
])
const kinds = ['volume', 'length', 'hardness', 'strength', 'temperature'] as const

function read(text: string, dice: Dice): boolean {
  const decimal = ([',', '.', undefined] as const)[dice(3)]
  const kind = kinds[dice(kinds.length)]!
  const number = readNumber(text, decimal === undefined ? {} : { decimal })
  const gallons = (['us', 'imperial', undefined] as const)[dice(3)]
  const quantity = readQuantity(text, { kind, decimal, gallons })
  for (const one of [number, quantity]) {
    if ('fault' in one) {
      if (one.fault === '') throw new Error('a refusal without a word')
    } else if (!Number.isFinite(one.value)) throw new Error(`read ${one.value} from ${JSON.stringify(text)}`)
  }
  const cell = readCell(text, { sign: decimal ?? null, strict: dice(2) === 0 })
  if (cell.kind === 'value' && JSON.stringify(cell.value).includes('null'))
    throw new Error(`a class without a figure: ${JSON.stringify(cell)}`)
  readHeading(text, (['metric', 'us', 'imperial'] as const)[dice(3)]!)
  readDateText(text)
  return !('fault' in quantity)
}

/** Numbers, quantities with their units, cells, headings and dates as typed. */
export const quantities: FuzzedParser = {
  name: 'numbers, units, headings, dates',
  tryOne: (dice) => (read(Buffer.from(mutated(dice, seeds, tokens)).toString('utf8'), dice) ? 'taken' : 'refused'),
}
