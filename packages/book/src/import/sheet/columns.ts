import { say } from '@sumpbook/fluid'
import type { Fault } from '../../errors.ts'
import type { Question, SheetField, SheetMap } from '../sheet-types.ts'
import type { DateOrder } from './date-order.ts'
import { isNumberField, numberFields, rowFields, sumpFields } from './fields.ts'
import type { Head } from './heading-row.ts'
import { type Heading, readHeading, type UnknownHeading, unitInHeading } from './headings.ts'
import { isBookkeeping } from './headings-words.ts'
import { knownMachineHeading, newMachineHeading } from './machine-headings.ts'
import { type ShopUnits, type Unit, unitNamed, unitNames } from './units.ts'
import { pointerKey } from './words.ts'

/** How one column of the sheet is understood. */
export interface SheetColumn {
  index: number
  /** As it stands in the sheet. */
  heading: string
  /** Null where the column is left out. */
  field: SheetField | null
  /** The unit of its numbers that name none; null where it is still to be settled, or where there is no need of one. */
  unit: Unit | null
  /** That unit as it was said, kept beside what was typed. */
  unitText: string | null
  /** The machine the column is about, as written; null where a cell of the row says it. */
  machine: string | null
  /** Where in the map its unit is answered. */
  unitPointer: string
  /** Whether the map said the unit. */
  unitMapped: boolean
  /** An open question stands in the way of reading its numbers. */
  open: boolean
}

/** The columns as far as headings and map tell. */
export interface ColumnPlan {
  shape: 'long' | 'wide'
  columns: SheetColumn[]
  /** The order of dates that a heading announces. */
  dateOrder: DateOrder | undefined
  questions: Question[]
  faults: Fault[]
  warnings: string[]
}

export interface PlanInput {
  head: Head
  map: SheetMap
  shop: ShopUnits
  /** Names of machines that the book and the map know. */
  names: readonly string[]
}

type Understood = Heading & { machine: string | null; mapped: boolean }

/**
 * Says of every column what its heading and the map make of it. In a wide sheet a heading that is understood in no other
 * way may be the name of a machine: then `field` is null and `machine` is the heading, to be judged by its cells.
 */
export function planColumns(input: PlanInput): ColumnPlan {
  const { head, map } = input
  const plan: ColumnPlan = { shape: 'long', columns: [], dateOrder: undefined, questions: [], faults: [], warnings: [] }
  const firsts = head.headings.map((heading, i) => firstReading(input, plan, heading, i))
  const hasMachineColumn = firsts.some((one) => one?.field === 'sump')
  const aboutMachines = firsts.some((one) => one !== null && one.field !== 'sump' && one.machine !== null)
  plan.shape = map.shape ?? (hasMachineColumn ? 'long' : 'wide')
  if (plan.shape === 'wide' && hasMachineColumn)
    plan.warnings.push(say('The sheet was read as wide, as the map says; its column of machines is left out.'))
  for (const [index, heading] of head.headings.entries()) {
    plan.columns.push(columnOf({ input, plan, heading, index, first: firsts[index] ?? null, aboutMachines }))
  }
  for (const key of Object.keys(map.columns ?? {})) {
    if (!head.headings.includes(key))
      plan.warnings.push(say('The map names a column "{heading}" that the sheet does not have.', { heading: key }))
  }
  plan.faults.push(...doubled(plan.columns))
  return plan
}

/** What map, machine names and dictionary say; null where none knows the heading, or the map leaves it out. */
function firstReading(
  { head, map, shop, names }: PlanInput,
  plan: ColumnPlan,
  heading: string,
  index: number,
): Understood | null {
  if (heading === '' && head.dateColumn !== index) return null
  const mapped = map.columns?.[heading]
  if (mapped === null) return null
  const said = readBySelf(spelled(head, index), names, shop)
  if (index === head.dateColumn && mapped?.field === undefined) {
    plan.warnings.push(
      heading === ''
        ? say('Column {column} is taken as the date: its cells are dates.', { column: String(index + 1) })
        : say('"{heading}" is taken as the date: its cells are dates.', { heading }),
    )
    return { field: 'at', unit: null, unitText: null, machine: null, mapped: false }
  }
  if (mapped === undefined) return said === null ? null : { ...said, mapped: false }
  return withMap({ heading, mapped, said, shop, plan })
}

function readBySelf(
  heading: string,
  names: readonly string[],
  shop: ShopUnits,
): (Heading & { machine: string | null }) | null {
  const known = knownMachineHeading(heading, names, shop)
  if (known !== null && known.of !== null) return { ...known.of, machine: known.machine }
  if (known !== null) return null
  const read = readHeading(heading, shop)
  return read.field === null ? null : { ...read, machine: null }
}

/** The heading with the unit that stands beneath it. */
function spelled({ headings, units }: Head, index: number): string {
  const unit = units[index] ?? ''
  return unit === '' ? headings[index]! : `${headings[index]} (${unit})`
}

function withMap({
  heading,
  mapped,
  said,
  shop,
  plan,
}: {
  heading: string
  mapped: NonNullable<NonNullable<SheetMap['columns']>[string]>
  said: (Heading & { machine: string | null }) | null
  shop: ShopUnits
  plan: ColumnPlan
}): Understood | null {
  const field = mapped.field ?? said?.field ?? null
  const machine = mapped.sump ?? said?.machine ?? null
  if (field === null) return null
  if (!isNumberField(field)) return { field, unit: null, unitText: null, machine, mapped: true }
  if (mapped.unit === undefined) {
    const bySelf = said?.field === field ? said : unitInHeading(heading, numberFields[field], shop)
    return {
      field,
      unit: bySelf.unit,
      unitText: bySelf.unitText,
      ...(bySelf.trouble === undefined ? {} : { trouble: bySelf.trouble }),
      machine,
      mapped: true,
    }
  }
  const unit = unitNamed(mapped.unit, numberFields[field], shop)
  if (unit === null || unit === 'which-gallon') {
    plan.faults.push({
      pointer: `/columns/${pointerKey(heading)}/unit`,
      found: JSON.stringify(mapped.unit),
      expected: say('one of {values}', { values: unitNames(numberFields[field]).join(', ') }),
    })
    return { field, unit: null, unitText: null, machine, mapped: true }
  }
  return {
    field: field === 'level' && unit.dimension === 'volume' ? 'volume' : field,
    unit,
    unitText: mapped.unit,
    machine,
    mapped: true,
  }
}

function columnOf({
  input,
  plan,
  heading,
  index,
  first,
  aboutMachines,
}: {
  input: PlanInput
  plan: ColumnPlan
  heading: string
  index: number
  first: Understood | null
  aboutMachines: boolean
}): SheetColumn {
  const column: SheetColumn = {
    index,
    heading,
    field: null,
    unit: null,
    unitText: null,
    machine: null,
    unitPointer: `/columns/${pointerKey(heading)}/unit`,
    unitMapped: input.map.columns?.[heading]?.unit !== undefined,
    open: false,
  }
  if (first === null) return unknownColumn(column, { input, plan })
  if (plan.shape === 'wide' && first.field === 'sump') return column
  if (plan.shape === 'long' && first.machine !== null && !first.mapped) {
    plan.warnings.push(
      say('"{heading}" is about one machine in a sheet with a column of machines; it is left out.', { heading }),
    )
    return column
  }
  if (first.dateOrder !== undefined) plan.dateOrder = first.dateOrder
  column.field = first.field
  column.unit = first.unit
  column.unitText = first.unitText
  column.machine = rowFields.includes(first.field) ? null : first.machine
  if (first.trouble !== undefined) troubled(column, first, { input, plan })
  if (plan.shape === 'wide' && column.machine === null && sumpFields.includes(first.field))
    return orphan(column, { input, plan, aboutMachines })
  return column
}

interface Context {
  input: PlanInput
  plan: ColumnPlan
}

function troubled(column: SheetColumn, { trouble, unitText }: Heading, { input, plan }: Context): void {
  column.open = true
  if (trouble === 'which-gallon') {
    plan.questions.push({
      pointer: column.unitPointer,
      question: say('Which gallon is meant by "{heading}"?', { heading: column.heading }),
      choices: ['US gal', 'imperial gal'],
    })
    return
  }
  const dimensions = isNumberField(column.field) ? numberFields[column.field] : []
  plan.faults.push({
    pointer: `/columns/${pointerKey(column.heading)}`,
    row: input.head.row,
    column: column.heading,
    found: say('the unit "{unit}"', { unit: String(unitText) }),
    expected: say('one of {units} (or say in the map what the column holds)', {
      units: unitNames(dimensions).join(', '),
    }),
  })
}

/** A reading in a wide sheet that says no machine. */
function orphan(
  column: SheetColumn,
  { input, plan, aboutMachines }: Context & { aboutMachines: boolean },
): SheetColumn {
  const wholeSheet = machineOfTitles(input)
  if (!aboutMachines && wholeSheet !== null) return { ...column, machine: wholeSheet }
  if (aboutMachines) {
    plan.warnings.push(
      say('"{heading}" does not say which machine it is about; it is left out.', { heading: column.heading }),
    )
    return { ...column, field: null }
  }
  plan.questions.push({
    pointer: `/columns/${pointerKey(column.heading)}/sump`,
    question: say('Which machine is "{heading}" about? The sheet has no column of machines.', {
      heading: column.heading,
    }),
  })
  return { ...column, open: true }
}

/** The one machine that a title names, for a sheet that is about it alone. */
function machineOfTitles({ head, names }: PlanInput): string | null {
  const found = names.filter((name) =>
    head.titles.some(
      (title) => knownMachineHeading(title, [name], 'us') !== null || title.toLowerCase() === name.toLowerCase(),
    ),
  )
  return found.length === 1 ? found[0]! : null
}

function unknownColumn(column: SheetColumn, { input, plan }: Context): SheetColumn {
  const { heading } = column
  if (heading === '') return column
  const text = spelled(input.head, column.index)
  if (input.map.columns?.[heading] === null) return column
  const known = knownMachineHeading(text, input.names, input.shop)
  if (plan.shape === 'wide' && (known !== null || !isBookkeeping(heading))) {
    const machine = known !== null ? { machine: heading, of: null } : newMachineHeading(text, input.shop)
    if (machine === null)
      return isConcentration(heading, input.shop) ? leftOut(column, plan, input.shop) : { ...column, machine: heading }
    if (machine.of === null) return { ...column, machine: machine.machine }
    const { field, unit, unitText } = machine.of
    const understood = { ...column, field, unit, unitText, machine: machine.machine }
    if (machine.of.trouble !== undefined) troubled(understood, machine.of, { input, plan })
    return understood
  }
  return leftOut(column, plan, input.shop)
}

const isConcentration = (heading: string, shop: ShopUnits) =>
  (readHeading(heading, shop) as UnknownHeading).reason === 'concentration'

function leftOut(column: SheetColumn, plan: ColumnPlan, shop: ShopUnits): SheetColumn {
  const { heading } = column
  plan.warnings.push(
    isConcentration(heading, shop)
      ? say(
          '"{heading}" does not say how it came about. A concentration worked out from °Brix is worked out again; for a titration say so in the map; it is left out.',
          { heading },
        )
      : say('"{heading}" is not understood; it is left out.', { heading }),
  )
  return column
}

/** Two columns for one thing: neither goes before the other. Notes are put together. */
function doubled(columns: readonly SheetColumn[]): Fault[] {
  const seen = new Map<string, SheetColumn>()
  return columns.flatMap((column) => {
    if (column.field === 'note' || (column.field === null && column.machine === null)) return []
    const key = `${column.field ?? ''}|${column.machine?.toLowerCase() ?? ''}`
    const first = seen.get(key)
    if (first === undefined) return seen.set(key, column) && []
    return [
      {
        pointer: `/columns/${pointerKey(column.heading)}`,
        column: column.heading,
        found: say('a second column for the same as "{heading}"', { heading: first.heading }),
        expected: say('one column for each; leave the other out in the map, or give it another heading'),
      },
    ]
  })
}
