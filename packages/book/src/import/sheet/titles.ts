import type { SheetField } from '../sheet-types.ts'
import { isNumberField, numberFields } from './fields.ts'
import { unitInHeading } from './headings.ts'
import { fieldNamed } from './headings-words.ts'
import { canonicalUnit, type ShopUnits, type Unit } from './units.ts'
import { plain } from './words.ts'

/** What the titles above a sheet say that it holds. */
export interface TitleSays {
  field: SheetField
  unit: Unit | null
  unitText: string | null
  title: string
}

/** The one field that titles such as "Brix readings 2026" name; null where they name none or several. */
export function saidByTitles(titles: readonly string[], shop: ShopUnits): TitleSays | null {
  const says = titles.flatMap((title) => fieldsIn(title).map((field) => ({ field, title })))
  const [first] = says
  if (first === undefined || says.some(({ field }) => field !== first.field)) return null
  if (!isNumberField(first.field)) return null
  const { unit, unitText } = unitInHeading(first.title, numberFields[first.field], shop)
  const ownUnit =
    unit === null || numberFields[first.field].some((dimension) => canonicalUnit(dimension).name === unit.name)
  return ownUnit ? { ...first, unit, unitText: null } : { ...first, unit, unitText }
}

/** Fields named by one to three words of the title that follow each other; the longest wins. */
function fieldsIn(title: string): SheetField[] {
  const words = plain(title).split(' ')
  const found: SheetField[] = []
  for (let at = 0; at < words.length; at += 1) {
    const length = [3, 2, 1].find(
      (count) => at + count <= words.length && isReadingField(words.slice(at, at + count).join(' ')),
    )
    if (length === undefined) continue
    found.push(fieldNamed(words.slice(at, at + length).join(' '))!)
    at += length - 1
  }
  return found
}

const isReadingField = (phrase: string) => isNumberField(fieldNamed(phrase))
