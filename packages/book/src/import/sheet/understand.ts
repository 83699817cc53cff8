import { say } from '@sumpbook/fluid'
import type { Fault } from '../../errors.ts'
import { refusal } from '../../errors.ts'
import type { SheetBook } from '../sheet-book.ts'
import type { Question, SheetMap } from '../sheet-types.ts'
import { isGap } from './cells.ts'
import { planColumns, type SheetColumn } from './columns.ts'
import { settleDates } from './date-evidence.ts'
import type { DateOrder } from './date-order.ts'
import { type DecimalEvidence, type DecimalRule, noDecimals, settleDecimals } from './decimals.ts'
import { isNumberField } from './fields.ts'
import { findHead, type Head, headLength } from './heading-row.ts'
import { knownMachineHeading } from './machine-headings.ts'
import { type Machines, namesOfSumps, resolveMachines } from './machines.ts'
import { askForFactors, type MapThings, thingsOfMap } from './map-things.ts'
import { settleColumns } from './settle-columns.ts'
import type { SheetRow, SheetRows } from './sheet-rows.ts'
import { type Survey, surveySheet } from './survey.ts'
import { saidByTitles } from './titles.ts'
import { bandOf, type MachineBand } from './values-evidence.ts'
import { sameName } from './words.ts'

/** A sheet as it is understood before its rows are read for good. */
export interface Understanding {
  head: Head
  shape: 'long' | 'wide'
  columns: SheetColumn[]
  dateOrder: DateOrder | null
  decimals: DecimalRule
  decimalsOpen: boolean
  machines: Machines
  things: MapThings
  questions: Question[]
  faults: Fault[]
  warnings: string[]
}

/**
 * Reads the whole sheet once to understand it: headings, shape, units, the order of dates, the decimal sign, the machines.
 * What nothing settles becomes a question.
 *
 * @throws {BookError} `refused-input` where there is no row of headings
 */
export async function understandSheet(sheet: SheetRows, map: SheetMap, book: SheetBook): Promise<Understanding> {
  const { units: shop } = book.shop
  const names = machineNames(map, book)
  const isMachine = (name: string) => names.some((known) => sameName(known) === sameName(name))
  const head = await headOf(sheet, map, { shop, names })
  const plan = planColumns({ head, map, shop, names })
  const survey = await surveySheet(
    sheet,
    head,
    plan.columns.map(({ field }) => field),
  )
  const titles = saidByTitles([...head.titles, ...(sheet.title === null ? [] : [sheet.title])], shop)
  const settled = settleColumns({
    plan,
    evidence: survey.columns,
    map,
    shop,
    titles,
    workbook: sheet.delimiter === null,
    isMachine,
    bandOf: (name) => bandOfMachine(name, book),
  })
  const columns = settled.columns
  const dates = datesOf(columns, survey, map.dates ?? plan.dateOrder)
  const decimals = settleDecimals(numbersOf(columns, survey), { told: map.decimal, delimiter: sheet.delimiter })
  const things = thingsOfMap(map, book)
  const machines = resolveMachines({ names: machinesOf(columns, plan.shape, survey), book, map, fluids: things.fluids })
  const used = new Set(machines.added.map(({ fluid }) => fluid))
  if (columns.some(({ field }) => field === 'brix') && (machines.added.length > 0 || book.sumps.length === 0))
    askForFactors(things, map, used)
  return {
    head,
    shape: plan.shape,
    columns,
    dateOrder: dates.order,
    decimals: decimals.rule,
    decimalsOpen: decimals.question !== null,
    machines,
    things,
    questions: [
      ...some(dates.question),
      ...some(decimals.question),
      ...plan.questions,
      ...settled.questions,
      ...things.questions,
      ...machines.questions,
    ],
    faults: [...missingColumns(head, columns, plan.questions), ...plan.faults, ...things.faults, ...machines.faults],
    warnings: [
      ...sheet.warnings,
      ...plan.warnings,
      ...settled.warnings,
      ...some(decimals.warning),
      ...things.warnings,
      ...machines.warnings,
    ],
  }
}

function bandOfMachine(name: string, { sumps, fluids }: Pick<SheetBook, 'sumps' | 'fluids'>): MachineBand | null {
  const [sump, ...more] = namesOfSumps(sumps).get(sameName(name)) ?? []
  if (sump === undefined || more.length > 0) return null
  return bandOf(
    sump,
    fluids.find(({ id }) => id === sump.fluid),
  )
}

const some = <T>(value: T | null): T[] => (value === null ? [] : [value])

/** Every name a machine goes by in the book and the map. */
function machineNames(map: SheetMap, book: Pick<SheetBook, 'sumps'>): string[] {
  const written = book.sumps.flatMap(({ id, name, machines = [] }) => [name, ...machines, id])
  const known = namesOfSumps(book.sumps)
  const mapped = Object.keys(map.machines ?? {})
  return [
    ...new Map(
      [...written, ...mapped]
        .filter((name) => known.has(sameName(name)) || mapped.includes(name))
        .map((name) => [sameName(name), name]),
    ).values(),
  ]
}

async function headOf(
  sheet: SheetRows,
  map: SheetMap,
  { shop, names }: { shop: SheetBook['shop']['units']; names: readonly string[] },
): Promise<Head> {
  const first: SheetRow[] = []
  for await (const row of sheet.rows()) {
    first.push(row)
    if (first.length >= headLength) break
  }
  const head = findHead(first, {
    shop,
    mapped: (heading) => {
      const mapped = map.columns?.[heading]
      return mapped === undefined ? undefined : (mapped?.field ?? null)
    },
    isMachine: (heading) => knownMachineHeading(heading, names, shop) !== null,
  })
  if (head !== null) return head
  throw refusal(
    [
      {
        pointer: '',
        found: say('no row of headings in the first {rows} rows', { rows: String(headLength) }),
        expected: say('a row with the heading of a date, and of a machine or the names of machines'),
      },
    ],
    'sheet',
  )
}

function datesOf(columns: readonly SheetColumn[], survey: Survey, said: DateOrder | undefined) {
  const column = columns.find(({ field }) => field === 'at')
  const evidence = column === undefined ? undefined : survey.columns[column.index]
  return evidence === undefined ? { order: null, question: null } : settleDates(evidence.dates, said)
}

function numbersOf(columns: readonly SheetColumn[], survey: Survey): DecimalEvidence {
  const all = noDecimals()
  for (const { field, machine, index } of columns) {
    if (!isNumberField(field) && !(field === null && machine !== null)) continue
    const { said, example, commaExample } = survey.columns[index]!.decimals
    for (const sign of [',', '.', 'none', 'either'] as const) all.said[sign] += said[sign]
    all.example ??= example
    all.commaExample ??= commaExample
  }
  return all
}

function machinesOf(columns: readonly SheetColumn[], shape: 'long' | 'wide', survey: Survey): string[] {
  if (shape === 'long') return survey.machines.filter((name) => !isGap(name))
  return columns.flatMap(({ machine }) => (machine === null ? [] : [machine]))
}

function missingColumns(head: Head, columns: readonly SheetColumn[], questions: readonly Question[]): Fault[] {
  const fault = (found: string, expected: string): Fault => ({ pointer: '/columns', row: head.row, found, expected })
  const has = (test: (column: SheetColumn) => boolean) => columns.some(test)
  return [
    ...(has(({ field }) => field === 'at')
      ? []
      : [fault(say('no column of dates'), say('a heading such as Date, Datum or Fecha'))]),
    ...(has(
      ({ field, machine }) =>
        isNumberField(field) || field === 'pumps' || field === 'note' || (field === null && machine !== null),
    ) || questions.length > 0
      ? []
      : [
          fault(
            say('no column of readings'),
            say('headings such as Brix, pH, Hardness (ppm), Level (L), Added (L), or the names of machines'),
          ),
        ]),
  ]
}
