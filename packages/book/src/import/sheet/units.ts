import {
  celsiusFrom,
  type HardnessUnit,
  hardnessFrom,
  type LengthUnit,
  litresFrom,
  millimetresFrom,
  type VolumeUnit,
} from '@sumpbook/fluid'

/** What a number of a sheet measures. */
export type Dimension =
  | 'volume'
  | 'length'
  | 'brix'
  | 'percent'
  | 'ph'
  | 'hardness'
  | 'mass'
  | 'conductivity'
  | 'temperature'
  | 'count'
  | 'hours'

/** A unit as a sheet says it. `gal` is not one: which gallon it is depends on the shop. */
export interface Unit {
  dimension: Dimension
  /** The unit's one spelling here, as reports and questions show it. */
  name: string
  /** Into the book's unit of that dimension. Negative values pass: judging them is the schema's part. */
  canonical(value: number): number
}

const same = (value: number) => value
const litres = (unit: VolumeUnit) => (value: number) => litresFrom(value, unit)
const millimetres = (unit: LengthUnit) => (value: number) => millimetresFrom(value, unit)
/** The fluid's conversion refuses what is below 0; here that is found later, by the schema, with its row. */
const hardness = (unit: HardnessUnit) => (value: number) =>
  value < 0 ? -hardnessFrom(-value, unit) : hardnessFrom(value, unit)

/** Each unit with the words for it, in the spelling of {@link unitWord}. The first of a dimension is the book's own. */
const table: Record<Dimension, readonly [name: string, canonical: (value: number) => number, words: string][]> = {
  volume: [
    ['L', litres('L'), 'l ltr lt litre litres liter liters litro litros'],
    ['mL', litres('mL'), 'ml millilitre milliliter mililitros'],
    ['m³', litres('m3'), 'm3 cbm'],
    ['US gal', litres('us-gal'), 'usgal usgallon usgallons usg galus us-gal'],
    [
      'imperial gal',
      litres('imp-gal'),
      'impgal impgallon impgallons imperialgal imperialgallon imperialgallons ukgal ukgallon ukgallons imp-gal',
    ],
    ['US qt', litres('us-qt'), 'usqt us-qt'],
    ['US fl oz', litres('us-fl-oz'), 'usfloz us-fl-oz'],
  ],
  length: [
    ['mm', same, 'mm millimetre millimetres millimeter millimeters milimetros'],
    ['cm', millimetres('cm'), 'cm centimetre centimetres centimeter centimeters zentimeter centimetros'],
    ['in', millimetres('in'), 'in inch inches zoll pulgada pulgadas "'],
    ['ft', millimetres('ft'), 'ft feet'],
  ],
  brix: [['°Brix', same, '°brix brix °bx bx %brix brix% %bx °bx% degbrix gradbrix gradosbrix']],
  percent: [
    ['%', same, '% percent pct prozent porciento vol% %vol vol-% %v/v v/v'],
    /** What a workbook keeps where it shows a percentage. */
    ['fraction of 1', (value) => value * 100, 'fraction'],
  ],
  ph: [['pH', same, 'ph phunits']],
  hardness: [
    ['ppm', same, 'ppm mg/l ppmcaco3 mg/lcaco3 caco3 ppmascaco3 mg/lascaco3 mgcaco3/l'],
    ['°dH', hardness('dH'), '°dh dh dgh °dgh graddh degdh gradoshd °d'],
    ['gpg', hardness('gpg'), 'gpg grain grains gr/gal grains/gal grain/gal grainspergallon gr grainsperusgallon'],
    ['°Clark', hardness('clark'), '°clark clark °e degclark'],
    ['°fH', hardness('fH'), '°fh fh °f °tf tf'],
    ['mmol/L', hardness('mmol/L'), 'mmol/l'],
  ],
  mass: [
    ['mg/L', same, 'mg/l ppm'],
    ['g/L', (value) => value * 1000, 'g/l'],
  ],
  conductivity: [
    ['mS/cm', same, 'ms/cm ms'],
    ['µS/cm', (value) => value / 1000, 'us/cm us microsiemens micros/cm'],
  ],
  temperature: [
    ['°C', (value) => celsiusFrom(value, 'C'), '°c c degc celsius'],
    ['°F', (value) => celsiusFrom(value, 'F'), '°f f degf fahrenheit'],
  ],
  count: [['CFU/mL', same, 'cfu/ml cfu kbe/ml kbe ufc/ml ufc /ml 1/ml']],
  hours: [['h', same, 'h hr hrs hour hours std stunde stunden hora horas']],
}

const byWord = new Map(
  (Object.keys(table) as Dimension[]).map((dimension) => [
    dimension,
    new Map(
      table[dimension].flatMap(([name, canonical, words]) =>
        [...words.split(' '), unitWord(name)].map((word) => [word, { dimension, name, canonical } satisfies Unit]),
      ),
    ),
  ]),
)

/** A unit's text as it is compared: no blanks, no full stops, lower case, one sign for micro and for degree. */
export function unitWord(text: string): string {
  return text
    .toLowerCase()
    .replace(/[\s.]/g, '')
    .replace(/[µμ]/g, 'u')
    .replace(/[º˚]/g, '°')
    .replaceAll('³', '3')
    .replaceAll('″', '"')
    .replace(/^(deg|grad|grados)(?=[cf]$)/, '°')
}

const gallonWords = new Set(['gal', 'gals', 'gallon', 'gallons', 'gallone', 'gallonen', 'galon', 'galones', 'galón'])
const quartWords = new Set(['qt', 'qts', 'quart', 'quarts'])

export type ShopUnits = 'us' | 'metric' | 'imperial'

/**
 * The unit a word names where one of these dimensions is meant; null where it names none. A gallon is the shop's own; a
 * metric shop has none, so there it is `'which-gallon'`.
 */
export function unitNamed(
  text: string,
  dimensions: readonly Dimension[],
  shop: ShopUnits,
): Unit | 'which-gallon' | null {
  const word = unitWord(text)
  if (dimensions.includes('volume')) {
    if (gallonWords.has(word)) return shop === 'metric' ? 'which-gallon' : gallonOf(shop)
    if (quartWords.has(word) && shop === 'us') return unitNamed('us qt', dimensions, shop)
  }
  for (const dimension of dimensions) {
    const unit = byWord.get(dimension)!.get(word)
    if (unit !== undefined) return unit
  }
  return null
}

/** The unit of that one spelling. */
export function unitOf(dimension: Dimension, name: string): Unit {
  const unit = byWord.get(dimension)!.get(unitWord(name))
  if (unit === undefined)
    throw new RangeError(`unit of ${dimension} is ${name}, expected one of ${unitNames([dimension]).join(', ')}`)
  return unit
}

/** The book's own unit of a dimension. */
export const canonicalUnit = (dimension: Dimension): Unit => unitOf(dimension, table[dimension][0]![0])

/** Every unit of these dimensions, as questions and faults list them. */
export const unitNames = (dimensions: readonly Dimension[]): string[] =>
  dimensions.flatMap((dimension) => table[dimension].map(([name]) => name))

/** The gallon of a shop that has one. */
export const gallonOf = (shop: 'us' | 'imperial'): Unit => unitOf('volume', shop === 'us' ? 'US gal' : 'imperial gal')

/** Whether the text names a unit of any dimension, and nothing else. */
export const isUnit = (text: string): boolean => unitNamed(text, Object.keys(table) as Dimension[], 'us') !== null
