import type { HardnessUnit } from './hardness.ts'
import type { LengthUnit } from './length.ts'
import type { TemperatureUnit } from './temperature.ts'
import type { VolumeUnit } from './volume.ts'

/** The units in which each kind of quantity can be typed. */
export interface UnitOf {
  volume: VolumeUnit
  length: LengthUnit
  temperature: TemperatureUnit
  hardness: HardnessUnit
  percent: '%'
  /** `water-parts`: the N of 1 part concentrate to N parts water, "1:20". `one-in`: the N of 1 part in N parts of mix, "1 in 20". */
  strength: '%' | 'water-parts' | 'one-in'
  brix: '°Brix'
  ph: 'pH'
  /** Something dissolved in the mix or the water: nitrite, nitrate, chloride, sulfate. */
  dissolved: 'mg/L'
  conductivity: 'mS/cm' | 'µS/cm'
  count: 'CFU/mL'
  number: '1'
}
export type QuantityKind = keyof UnitOf

/** What is known of a kind of quantity before anything is typed. */
export interface KindWords<Unit extends string> {
  /** How a value may look, for the fault's sentence. */
  example: string
  /** Above this no value makes sense; only used to settle how an ambiguous number is read. */
  largest?: number
  /** Every spelling, as {@link plainUnit} leaves it. */
  words: Readonly<Record<string, Unit>>
}

/**
 * Spellings of the units. Gallons, quarts and fluid ounces without a country are not here: they are two units each.
 */
export const unitWords: { readonly [Kind in QuantityKind]: KindWords<UnitOf[Kind]> } = {
  volume: {
    example: '60 L, 15 US gal or 12 imp gal',
    words: {
      ...spell('L', ['l', 'ltr', 'ltrs', 'lt', 'liter', 'liters', 'litre', 'litres', 'dm3', 'dm^3']),
      ...spell('mL', ['ml', 'milliliter', 'milliliters', 'millilitre', 'millilitres', 'cm3', 'cm^3', 'cc']),
      ...spell('m3', ['m3', 'm^3', 'cbm']),
      ...spell('us-gal', ['usgal', 'usgals', 'usgallon', 'usgallons', 'galus', 'gal(us)', 'us-gal']),
      ...spell('imp-gal', [
        'impgal',
        'impgals',
        'impgallon',
        'impgallons',
        'imperialgallon',
        'imperialgallons',
        'ukgal',
        'ukgallon',
        'ukgallons',
        'galimp',
        'gal(imp)',
        'imp-gal',
      ]),
      ...spell('us-qt', ['usqt', 'usquart', 'usquarts', 'us-qt']),
      ...spell('us-fl-oz', ['usfloz', 'usfluidounce', 'usfluidounces', 'us-fl-oz']),
    },
  },
  length: {
    example: '120 mm or 4.7 in',
    words: {
      ...spell('mm', ['mm', 'millimeter', 'millimeters', 'millimetre', 'millimetres']),
      ...spell('cm', ['cm', 'centimeter', 'centimeters', 'centimetre', 'centimetres']),
      ...spell('m', ['m', 'meter', 'meters', 'metre', 'metres']),
      ...spell('in', ['in', 'inch', 'inches', '"', "''"]),
      ...spell('ft', ['ft', 'foot', 'feet', "'"]),
    },
  },
  temperature: {
    example: '20 °C or 68 °F',
    words: {
      ...spell('C', ['c', '°c', 'degc', 'celsius']),
      ...spell('F', ['f', '°f', 'degf', 'fahrenheit']),
    },
  },
  hardness: {
    example: '250 ppm, 14 °dH or 15 gpg',
    words: {
      ...spell('ppm', ['ppm', 'mg/l', 'ppmcaco3', 'mg/lcaco3', 'mgcaco3/l', 'ppmascaco3', 'mg/lascaco3']),
      ...spell('dH', ['dh', '°dh', 'gdh', '°gdh', 'dgh', '°dgh']),
      ...spell('gpg', ['gpg', 'gr/gal', 'gr/usgal', 'grain/gal', 'grains/gal', 'grainspergallon', 'grains/usgal']),
      ...spell('clark', ['clark', '°clark', '°e', '°eh', 'degclark']),
      ...spell('fH', ['fh', '°fh']),
      ...spell('mmol/L', ['mmol/l']),
    },
  },
  percent: { example: '7.5 %', largest: 100, words: percentWords() },
  strength: { example: '7.5 %, 1:20 or 1 in 20', largest: 100, words: percentWords() },
  brix: {
    example: '3.4 °Brix',
    largest: 95,
    words: spell('°Brix', ['brix', '°brix', 'bx', '°bx', 'degbrix', '%brix']),
  },
  ph: { example: '9.2', largest: 14, words: spell('pH', ['ph']) },
  dissolved: { example: '20 mg/L', words: spell('mg/L', ['mg/l', 'ppm']) },
  conductivity: {
    example: '2.4 mS/cm',
    words: { ...spell('mS/cm', ['ms/cm', 'mmho/cm']), ...spell('µS/cm', ['us/cm', 'umho/cm']) },
  },
  count: { example: '10000 CFU/mL', words: spell('CFU/mL', ['cfu/ml', 'cfuperml']) },
  number: { example: '12', words: {} },
}

/** Words that name a US or an imperial unit, depending on where one stands, with the US one where we have it. */
export const countrylessWords: Readonly<Record<string, { us: VolumeUnit; imperial: VolumeUnit | null; name: string }>> =
  {
    ...countryless('gallon', { us: 'us-gal', imperial: 'imp-gal' }, ['gal', 'gals', 'gallon', 'gallons']),
    ...countryless('quart', { us: 'us-qt', imperial: null }, ['qt', 'qts', 'quart', 'quarts']),
    ...countryless('fluid ounce', { us: 'us-fl-oz', imperial: null }, ['floz', 'fluidounce', 'fluidounces']),
  }

/** A typed unit without what people vary: case, blanks, points, the look of degree, micro, power and quote signs. */
export function plainUnit(typed: string): string {
  return typed
    .normalize('NFC')
    .replace(/[\s\u00a0.]/g, '')
    .replace(/[º˚]/g, '°')
    .replace(/[µμ]/g, 'u')
    .replaceAll('³', '3')
    .replace(/[″”“]/g, '"')
    .replace(/[′’]/g, "'")
    .toLowerCase()
}

function percentWords(): Record<string, '%'> {
  return spell('%', ['%', 'percent', 'pct', 'vol%', '%vol', '%v/v', '%(v/v)'])
}

function spell<Unit extends string>(unit: Unit, spellings: readonly string[]): Record<string, Unit> {
  return Object.fromEntries(spellings.map((spelling) => [spelling, unit]))
}

function countryless(
  name: string,
  units: { us: VolumeUnit; imperial: VolumeUnit | null },
  spellings: readonly string[],
) {
  return Object.fromEntries(spellings.map((spelling) => [spelling, { ...units, name }]))
}
