import type { SheetField } from '../sheet-types.ts'
import { type DateOrder, orderSaid } from './date-order.ts'
import { isNumberField, numberFields } from './fields.ts'
import { fieldNamed, fieldNamedExactly, fillers, isBareConcentration, isConcentrate } from './headings-words.ts'
import { type Dimension, type ShopUnits, type Unit, unitNamed } from './units.ts'
import { plain } from './words.ts'

/** What a heading says its column holds. */
export interface Heading {
  field: SheetField
  /** Null where it names none. */
  unit: Unit | null
  /** The unit as it stands in the heading, kept beside what was typed. */
  unitText: string | null
  /** The order of days, months and years it announces: "Date (dd/mm/yyyy)". */
  dateOrder?: DateOrder
  /** What is wrong with its unit: none that is known, or a gallon that may be either. */
  trouble?: 'unknown-unit' | 'which-gallon'
}

/** A heading that is not understood, with the reason where there is one to say. */
export interface UnknownHeading {
  field: null
  reason: 'unknown' | 'concentration'
}

/** A heading cut into what it is about and what may be its unit. */
interface Cut {
  phrase: string
  unitText: string
  /** Whether a sign and not a mere blank parts the two. */
  parted: boolean
}

/**
 * Reads a heading: field and unit, the unit in brackets, after a comma or a slash, or as its last or first words.
 *
 * @example readHeading('Hardness, gpg', 'us') // { field: 'hardness', unit: gpg, unitText: 'gpg' }
 */
export function readHeading(text: string, shop: ShopUnits): Heading | UnknownHeading {
  if (isBareConcentration(text)) return { field: null, reason: 'concentration' }
  const exact = fieldNamedExactly(text)
  if (exact !== null) return { field: exact, unit: null, unitText: null }
  const cuts = cutsOf(text)
  for (const cut of cuts) {
    const heading = headingOf(cut, shop)
    if (heading !== null) return heading
  }
  const whole = fieldNamed(text)
  if (whole !== null) return { field: whole, unit: null, unitText: null }
  return withoutKnownUnit(cuts) ?? { field: null, reason: 'unknown' }
}

/** The unit a heading names, where a field is already known from elsewhere. */
export function unitInHeading(
  text: string,
  dimensions: readonly Dimension[],
  shop: ShopUnits,
): Pick<Heading, 'unit' | 'unitText' | 'trouble'> {
  for (const { unitText } of cutsOf(text)) {
    const unit = unitNamed(unitText, dimensions, shop)
    if (unit === 'which-gallon') return { unit: null, unitText, trouble: 'which-gallon' }
    if (unit !== null) return { unit, unitText }
  }
  return { unit: null, unitText: null }
}

function headingOf({ phrase, unitText }: Cut, shop: ShopUnits): Heading | null {
  const named = isConcentrate(phrase) ? 'addedConcentrate' : fieldNamed(phrase)
  if (named === null) return null
  for (const field of alternatives(named)) {
    if (!isNumberField(field)) continue
    const unit = unitNamed(unitText, numberFields[field], shop)
    if (unit === 'which-gallon')
      return { field: field === 'level' ? 'volume' : field, unit: null, unitText, trouble: 'which-gallon' }
    if (unit !== null)
      return { field: field === 'level' && unit.dimension === 'volume' ? 'volume' : field, unit, unitText }
  }
  const scalePercent =
    named === 'brix' && plain(phrase).includes('brix') && unitNamed(unitText, ['percent'], shop) !== null
  return scalePercent ? { field: 'brix', unit: null, unitText } : null
}

/** "Water (gal)" is water poured, "Added %" the strength of it. */
function alternatives(field: SheetField): SheetField[] {
  if (field === 'water') return ['addedWater']
  if (field === 'added') return ['added', 'addedStrength']
  return [field]
}

/** A field with something beside it that is no unit: harmless where there is one unit only, or where it is a remark. */
function withoutKnownUnit(cuts: readonly Cut[]): Heading | null {
  for (const { phrase, unitText, parted } of cuts) {
    const field = parted && !/\d/.test(unitText) ? fieldNamed(phrase) : null
    if (field === null) continue
    const said = field === 'at' ? orderSaid(unitText) : null
    if (said !== null) return { field, unit: null, unitText: null, dateOrder: said }
    if (!isNumberField(field) || isRemark(unitText) || !hasSeveralUnits(numberFields[field]))
      return { field, unit: null, unitText: null }
    return { field, unit: null, unitText, trouble: 'unknown-unit' }
  }
  return null
}

const severalUnits = new Set<Dimension>(['volume', 'length', 'hardness', 'mass', 'conductivity', 'temperature'])
const hasSeveralUnits = (dimensions: readonly Dimension[]) =>
  dimensions.some((dimension) => severalUnits.has(dimension))

const remarks = new Set('total sump tank strip strips stick dipstick meter gauge machine today found as'.split(' '))
const isRemark = (text: string) =>
  fieldNamed(text) !== null ||
  plain(text)
    .split(' ')
    .every((word) => remarks.has(word) || fillers.has(word) || word === '')

/** Every way to cut a heading in two that the job knows, the surest first. */
function cutsOf(text: string): Cut[] {
  const cuts: Cut[] = []
  const add = (phrase: string, unitText: string, parted = true) => {
    if (phrase.trim() !== '' && unitText.trim() !== '')
      cuts.push({ phrase: phrase.trim(), unitText: unitText.trim(), parted })
  }
  const bracket = /^(.*?)[([{<]([^)\]}>]*)[)\]}>](.*)$/.exec(text)
  if (bracket !== null) add(`${bracket[1]} ${bracket[3]}`, bracket[2]!)
  for (const sign of [',', ';', '/', ' - ', ':']) {
    const place = text.indexOf(sign)
    if (place > 0) add(text.slice(0, place), text.slice(place + sign.length))
  }
  if (bracket !== null) return cuts
  const words = text.trim().split(/\s+/)
  for (const count of [3, 2, 1]) {
    if (words.length > count) add(words.slice(0, -count).join(' '), words.slice(-count).join(' '), false)
  }
  for (const count of [2, 1]) {
    if (words.length > count) add(words.slice(count).join(' '), words.slice(0, count).join(' '), false)
  }
  return cuts
}
