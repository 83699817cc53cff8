import { readNumber } from './read-number.ts'
import { countrylessWords, plainUnit, type QuantityKind, type UnitOf, unitWords } from './unit-words.ts'

/** What is asked for, and what is known of whoever typed. */
export interface QuantityReading<Kind extends QuantityKind> {
  kind: Kind
  /** The decimal sign in use, where known. It settles only what can be read both ways ("1,234"). */
  decimal?: ',' | '.' | undefined
  /** Where "gal", "qt" and "fl oz" are of; without it they are refused, since a US and an imperial gallon differ by a fifth. */
  gallons?: 'us' | 'imperial' | undefined
  /** The unit written at the field, meant where none is typed. */
  unit?: UnitOf[Kind] | undefined
}

/** A quantity as typed, in the unit typed. */
export interface TypedQuantity<Kind extends QuantityKind> {
  value: number
  /** Null where no unit was typed, the field names none and the kind has several. */
  unit: UnitOf[Kind] | null
}

/** Either the quantity, or a sentence saying what was found and what was expected. */
export type QuantityRead<Kind extends QuantityKind> = TypedQuantity<Kind> | { fault: string }

/** A number that ends in a digit, then the unit. Blanks and apostrophes inside belong to the number. */
const numberThenUnit = /^(10\^[+-]?\d+|[+\-−]?[\d.,](?:[\d.,'’\s]*\d)?(?:(?:[eE]|\s*[x×]\s*10\^)[+-]?\d+)?)\s*(.*)$/s

/** "1:20" and "1 in 20", with any number on either side. */
const ratioParts = /^([\d.,\s]*\d)\s*(:|in)\s*(\d[\d.,\s]*)$/i

/**
 * Reads a quantity as a person typed it: "7,5 %", "3.4 °Brix", "15 gpg", "1:20", "7.5". It judges the writing, not the size:
 * whether 19 is a possible pH is for whoever asked.
 *
 * Nothing is guessed: an unknown unit, a unit of another kind, "1,234" where both readings are possible, "gal" without
 * knowing which gallon, a ratio the wrong way round, all are faults.
 *
 * @example readQuantity('7,5 %', { kind: 'percent' }) // { value: 7.5, unit: '%' }
 * @example readQuantity('60 gal', { kind: 'volume', gallons: 'us' }) // { value: 60, unit: 'us-gal' }
 */
export function readQuantity<Kind extends QuantityKind>(
  text: string,
  { kind, decimal, gallons, unit }: QuantityReading<Kind>,
): QuantityRead<Kind> {
  const { example, largest } = unitWords[kind]
  const typed = text.trim()
  const expected = `expected ${nameOf[kind]} such as ${example}`
  if (typed === '') return { fault: `found nothing, ${expected}` }

  const ratio = ratioParts.exec(typed)
  if (ratio !== null) {
    if (kind !== 'strength') return { fault: `found the ratio "${typed}", ${expected}` }
    return readRatio(typed, ratio, decimal) as QuantityRead<Kind>
  }

  const parts = numberThenUnit.exec(kind === 'ph' ? typed.replace(/^ph\s*/i, '') : typed)
  if (parts === null) return { fault: `found "${typed}", ${expected}` }
  const number = readNumber(parts[1]!, { decimal, largest })
  if ('fault' in number) return number
  const found = unitTyped(parts[2]!, { kind, gallons, unit })
  if (typeof found === 'object' && found !== null) return { fault: `${found.fault}, ${expected}` }
  return { value: number.value, unit: found }
}

const nameOf: Readonly<Record<QuantityKind, string>> = {
  volume: 'a volume',
  length: 'a length',
  temperature: 'a temperature',
  hardness: 'a hardness',
  percent: 'a percentage',
  strength: 'a strength',
  brix: 'a refractometer reading',
  ph: 'a pH',
  dissolved: 'an amount in a litre',
  conductivity: 'a conductivity',
  count: 'a germ count',
  number: 'a number',
}

function unitTyped<Kind extends QuantityKind>(
  typed: string,
  { kind, gallons, unit }: Pick<QuantityReading<Kind>, 'kind' | 'gallons' | 'unit'>,
): UnitOf[Kind] | null | { fault: string } {
  const words = unitWords[kind].words as Readonly<Record<string, UnitOf[Kind]>>
  const plain = plainUnit(typed)
  if (plain === '') return unit ?? onlyUnit(kind)
  if (Object.hasOwn(words, plain)) return words[plain]!
  const countryless = Object.hasOwn(countrylessWords, plain) ? countrylessWords[plain]! : undefined
  if (kind !== 'volume' || countryless === undefined) return { fault: `found the unit "${typed.trim()}"` }
  const meant = gallons === undefined ? null : countryless[gallons]
  if (meant !== null) return meant as UnitOf[Kind]
  return { fault: `found "${typed.trim()}", which is a US or an imperial ${countryless.name}` }
}

/** The one unit of a kind that has only one; a strength without a sign could be a percentage or a ratio. */
function onlyUnit<Kind extends QuantityKind>(kind: Kind): UnitOf[Kind] | null {
  if (kind === 'number') return '1' as UnitOf[Kind]
  if (kind === 'strength') return null
  const units = new Set(Object.values(unitWords[kind].words))
  return units.size === 1 ? ([...units][0] as UnitOf[Kind]) : null
}

/** "1:20" and "1 in 20"; the concentrate comes first, since 20:1 is read either way round in different shops. */
function readRatio(typed: string, ratio: RegExpExecArray, decimal: ',' | '.' | undefined): QuantityRead<'strength'> {
  const [, concentrate, sign, rest = ''] = ratio
  if (concentrate !== '1') {
    return {
      fault: `found the ratio "${typed}", expected 1 part concentrate first: "1:20" for 1 part to 20 parts water, or "1 in 20" for 1 part in 20 parts of mix`,
    }
  }
  const number = readNumber(rest, { decimal })
  if ('fault' in number) return number
  return { value: number.value, unit: sign === ':' ? 'water-parts' : 'one-in' }
}
