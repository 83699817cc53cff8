import { say } from '@sumpbook/fluid'
import type { Question, SheetField, SheetMap } from '../sheet-types.ts'
import type { ColumnPlan, SheetColumn } from './columns.ts'
import { fieldWords, isNumberField, numberFields } from './fields.ts'
import type { ColumnEvidence } from './survey.ts'
import type { TitleSays } from './titles.ts'
import { canonicalUnit, gallonOf, type ShopUnits, type Unit, unitNamed, unitNames, unitOf } from './units.ts'
import { areEvidentlyBrix, type MachineBand, type MachineFigures } from './values-evidence.ts'

/** What the cells of the whole sheet settle about its columns. */
export interface SettledColumns {
  columns: SheetColumn[]
  questions: Question[]
  warnings: string[]
}

interface SettleInput {
  plan: ColumnPlan
  evidence: readonly ColumnEvidence[]
  map: SheetMap
  shop: ShopUnits
  titles: TitleSays | null
  /** Whether it is a workbook, which keeps 8 % as 0.08. */
  workbook: boolean
  /** Whether the book or the map has a machine of this name. */
  isMachine(name: string): boolean
  /** What the book knows of that machine's fluid; null where it is not enough. */
  bandOf(name: string): MachineBand | null
}

/** Fields that a column of a machine can hold where nothing says which. */
const valueChoices: SheetField[] = [
  'brix',
  'titration',
  'ph',
  'hardness',
  'conductivity',
  'temperature',
  'level',
  'volume',
  'added',
  'addedConcentrate',
]

/** Settles which headings are machines, what their columns hold, and the units of numbers that name none. */
export function settleColumns(input: SettleInput): SettledColumns {
  const settled: SettledColumns = { columns: [], questions: [], warnings: [] }
  const columns = input.plan.columns.map((column) => machineOrNothing(column, input, settled))
  const values = valuesOf(columns, input, settled)
  for (const column of columns.map((one) => withValues(one, values))) settled.columns.push(column)
  settleUnits(settled, input)
  doubtFractions(settled, input)
  warnOfHeadless(input, settled)
  return settled
}

const nothing = { filled: 0, numbers: 0, bare: 0 }

/** A heading that may be a machine is one where the book knows it or most of its cells are numbers. */
function machineOrNothing(
  column: SheetColumn,
  { evidence, isMachine }: SettleInput,
  settled: SettledColumns,
): SheetColumn {
  if (column.field !== null || column.machine === null) return column
  const { filled, numbers } = evidence[column.index] ?? nothing
  if (isMachine(column.machine) || numbers * 2 > filled) return column
  settled.warnings.push(
    filled === 0
      ? say('"{heading}" is empty; it is left out.', { heading: column.heading })
      : say('"{heading}" is not understood; it is left out.', { heading: column.heading }),
  )
  return { ...column, machine: null }
}

interface Values {
  field: SheetField
  unit: Unit | null
  unitText: string | null
  mapped: boolean
}

/** What stands under the names of machines: as the map says, else as the title, else as the figures show, else asked. */
function valuesOf(
  columns: readonly SheetColumn[],
  { map, shop, titles, evidence, bandOf }: SettleInput,
  settled: SettledColumns,
): Values | null {
  const open = columns.filter(({ field, machine }) => field === null && machine !== null)
  if (open.length === 0) return null
  const field = map.values?.field ?? titles?.field
  if (field === undefined && areEvidentlyBrix(figuresOf(open, evidence, bandOf))) {
    settled.warnings.push(
      say(
        'The columns of machines are taken as °Brix: so read they fit the bands of their fluids, as percent they would not. If they hold something else, say so (`values` in the map).',
      ),
    )
    return { field: 'brix', mapped: false, ...valuesUnit('brix', { map, shop, titles: null }) }
  }
  if (field === undefined) {
    const names = open.slice(0, 3).map(({ heading }) => `"${heading}"`)
    settled.questions.push({
      pointer: '/values/field',
      question: say('What do the columns {names} hold?', {
        names: `${names.join(', ')}${open.length > 3 ? ' …' : ''}`,
      }),
      choices: valueChoices,
    })
    return null
  }
  if (map.values?.field === undefined)
    settled.warnings.push(
      say('The columns of machines are taken as {what}, as the title "{title}" says.', {
        what: say(fieldWords[field]),
        title: titles!.title,
      }),
    )
  return { field, mapped: map.values?.unit !== undefined, ...valuesUnit(field, { map, shop, titles }) }
}

function figuresOf(
  columns: readonly SheetColumn[],
  evidence: readonly ColumnEvidence[],
  bandOf: SettleInput['bandOf'],
): MachineFigures[] {
  return columns.flatMap(({ machine, index }) => {
    const band = bandOf(machine!)
    return band === null ? [] : [{ figures: evidence[index]?.figures ?? [], band }]
  })
}

function valuesUnit(
  field: SheetField,
  { map, shop, titles }: Pick<SettleInput, 'map' | 'shop' | 'titles'>,
): { unit: Unit | null; unitText: string | null } {
  if (map.values?.unit !== undefined && isNumberField(field)) {
    const unit = unitNamed(map.values.unit, numberFields[field], shop)
    return unit === null || unit === 'which-gallon'
      ? { unit: null, unitText: null }
      : { unit, unitText: map.values.unit }
  }
  return titles !== null && titles.field === field
    ? { unit: titles.unit, unitText: titles.unitText }
    : { unit: null, unitText: null }
}

function withValues(column: SheetColumn, values: Values | null): SheetColumn {
  if (column.field !== null || column.machine === null) return column
  if (values === null) return { ...column, open: true }
  const field = values.field === 'level' && values.unit?.dimension === 'volume' ? 'volume' : values.field
  return {
    ...column,
    field,
    unit: values.unit,
    unitText: values.unitText,
    unitPointer: '/values/unit',
    unitMapped: values.mapped,
  }
}

/** Columns whose unit is answered at one place of the map are settled together. */
function settleUnits(settled: SettledColumns, input: SettleInput): void {
  const groups = Map.groupBy(
    settled.columns.filter(({ field, unit, open }) => isNumberField(field) && unit === null && !open),
    ({ unitPointer }) => unitPointer,
  )
  for (const [pointer, columns] of groups) settleUnit(pointer, columns, input, settled)
}

function settleUnit(
  pointer: string,
  columns: SheetColumn[],
  { evidence, shop }: SettleInput,
  settled: SettledColumns,
): void {
  const [{ field, heading }] = columns as [SheetColumn]
  if (!isNumberField(field)) return
  const seen = columns.map(({ index }) => evidence[index] ?? { ...nothing, largest: null })
  const bare = seen.reduce((sum, one) => sum + one.bare, 0)
  const largest = seen.reduce<number | null>(
    (most, one) => (one.largest === null ? most : Math.max(most ?? one.largest, one.largest)),
    null,
  )
  const isOfMachines = pointer === '/values/unit'
  const answer = assumed(field, { shop, largest })
  if (bare === 0 && (answer.unit === null || answer.warn !== null)) return
  if (answer.unit === null) {
    settled.questions.push({
      pointer,
      question: isOfMachines
        ? say('In which unit are the numbers of the columns of machines?')
        : say('In which unit are the numbers of "{heading}"?', { heading }),
      choices: unitNames(numberFields[field]),
    })
    for (const column of columns) column.open = true
    return
  }
  if (answer.warn !== null) {
    settled.warnings.push(
      say(
        'The numbers of {of, select, machines {the columns of machines} other {"{heading}"}} name no unit; they are taken as {unit}{why, select, own {, the shop\'s own} hardness {: {largest} degrees or grains would be far beyond any sump} other {: {largest} mS/cm would be brine}}.',
        {
          of: isOfMachines ? 'machines' : 'column',
          heading,
          unit: answer.unit.name,
          why: answer.warn,
          largest: String(largest),
        },
      ),
    )
  }
  for (const column of columns) column.unit = answer.unit
}

/** Numbers larger than these are in no sump when counted in the larger unit: 100 gpg and 100 °dH are above 1700 ppm, 100 mS/cm is brine. */
const largestInBigUnit = 100

/**
 * The unit of numbers that name none; null where it must be asked. `warn` says why it was taken, null where there is only one that
 * anybody uses.
 */
function assumed(
  field: keyof typeof numberFields,
  { shop, largest }: { shop: ShopUnits; largest: number | null },
): { unit: Unit | null; warn: 'own' | 'hardness' | 'conductivity' | null } {
  const [dimension, ...others] = numberFields[field]
  if (others.length > 0) return { unit: null, warn: null }
  switch (dimension) {
    case 'volume':
      return { unit: shop === 'metric' ? canonicalUnit('volume') : gallonOf(shop), warn: 'own' }
    case 'temperature':
      if (shop === 'imperial') return { unit: null, warn: null }
      return { unit: unitOf('temperature', shop === 'us' ? '°F' : '°C'), warn: 'own' }
    case 'hardness':
      if (largest === null || largest <= largestInBigUnit) return { unit: null, warn: null }
      return {
        unit: canonicalUnit('hardness'),
        warn: 'hardness',
      }
    case 'conductivity':
      if (largest === null || largest <= largestInBigUnit) return { unit: null, warn: null }
      return {
        unit: unitOf('conductivity', 'µS/cm'),
        warn: 'conductivity',
      }
    default:
      return { unit: canonicalUnit(dimension), warn: null }
  }
}

/** Percentages this small are rather parts of 1: nobody keeps a mix of 1 % or a sump with 0.05 % of tramp oil alone. */
const smallestPercent: Partial<Record<SheetField, number>> = { titration: 1, addedStrength: 1, trampOil: 0.05 }

/** A cell that a workbook shows as 8 % holds 0.08. Where all figures are that small, it is asked. */
function doubtFractions(settled: SettledColumns, { evidence, workbook }: SettleInput): void {
  if (!workbook) return
  for (const column of settled.columns) {
    const limit = column.field === null ? undefined : smallestPercent[column.field]
    const largest = evidence[column.index]?.largest ?? null
    if (limit === undefined || column.unitMapped || largest === null || largest === 0 || largest > limit) continue
    settled.questions.push({
      pointer: column.unitPointer,
      question: say(
        'Are the figures of "{heading}" percent, or parts of 1 that the workbook shows as percent? The largest is {largest}.',
        { heading: column.heading, largest: String(largest) },
      ),
      choices: ['%', 'fraction of 1'],
    })
    column.open = true
  }
}

function warnOfHeadless({ plan, evidence }: SettleInput, settled: SettledColumns): void {
  for (const [index, { filled }] of evidence.entries()) {
    const column = plan.columns[index]
    if (filled > 0 && (column === undefined || (column.heading === '' && column.field === null))) {
      settled.warnings.push(
        say('Column {column} has no heading; its {filled} filled cells are left out.', {
          column: String(index + 1),
          filled: String(filled),
        }),
      )
    }
  }
}
