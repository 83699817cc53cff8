import { readFileSync } from 'node:fs'
import highsModule from 'highs'
import { type Constraint, solve } from 'yalps'

/** A linear program as its files state it. Variables are 0 or more. */
export interface LinearProgram {
  direction: 'minimize' | 'maximize'
  rows: { name: string; bound: { low?: number; high?: number } }[]
  /** Each variable's cost and what it brings to the rows. */
  columns: { name: string; cost: number; entries: { row: string; value: number }[]; high?: number; integer?: boolean }[]
}

/** Reads an MPS file of the plain kind: rows N, G, L and E, upper bounds, no ranges. */
export function readMps(file: string): LinearProgram {
  const text = readFileSync(new URL(`data/${file}`, import.meta.url), 'utf8')
  const kinds = new Map<string, string>()
  const sides = new Map<string, number>()
  const columns = new Map<string, LinearProgram['columns'][number]>()
  let section = ''
  for (const line of text.split('\n')) {
    const words = line.trim().split(/\s+/)
    if (/^\S/.test(line)) {
      section = words[0]!
      if (section === 'RANGES') throw new Error(`${file} has ranges`)
    } else if (section === 'ROWS' && words.length === 2) {
      kinds.set(words[1]!, words[0]!)
    } else if (section === 'COLUMNS' && words.length > 1) {
      const column = columns.get(words[0]!) ?? { name: words[0]!, cost: 0, entries: [] }
      columns.set(words[0]!, column)
      for (const [row, value] of pairsOf(words.slice(1))) {
        if (kinds.get(row) === 'N') column.cost = value
        else column.entries.push({ row, value })
      }
    } else if (section === 'RHS' && words.length > 1) {
      // The name of the set may be left out.
      for (const [row, value] of pairsOf(words.length % 2 === 1 ? words.slice(1) : words)) sides.set(row, value)
    } else if (section === 'BOUNDS' && words.length > 1) {
      if (words[0] !== 'UP') throw new Error(`${file} has bounds ${words[0]}`)
      columns.get(words[2]!)!.high = Number(words[3])
    }
  }
  const rows = [...kinds]
    .filter(([, kind]) => kind !== 'N')
    .map(([name, kind]) => {
      const side = sides.get(name) ?? 0
      return { name, bound: kind === 'E' ? { low: side, high: side } : kind === 'G' ? { low: side } : { high: side } }
    })
  return { direction: 'minimize', rows, columns: [...columns.values()] }
}

/** The value of the best solution by the solver that the product uses; null where there is none. */
export function solveHere({ direction, rows, columns }: LinearProgram): number | null {
  const bounds = columns.filter(({ high }) => high !== undefined)
  const constraints: [string, Constraint][] = [
    ...rows.map(({ name, bound }): [string, Constraint] => [`row ${name}`, constraintOf(bound)]),
    ...bounds.map(({ name, high }): [string, Constraint] => [`bound ${name}`, { max: high! }]),
  ]
  const variables = columns.map(({ name, cost, entries, high }): [string, [string, number][]] => [
    name,
    [
      ['cost', cost],
      ...entries.map(({ row, value }): [string, number] => [`row ${row}`, value]),
      ...(high === undefined ? [] : [[`bound ${name}`, 1] as [string, number]]),
    ],
  ])
  const integers = columns.filter(({ integer }) => integer === true).map(({ name }) => name)
  const { status, result } = solve(
    { direction, objective: 'cost', constraints, variables, integers },
    { precision: 1e-10 },
  )
  if (status === 'infeasible') return null
  if (status !== 'optimal') throw new Error(status)
  return result
}

/** The same by HiGHS. */
export async function solverByHighs(): Promise<(program: LinearProgram) => number | null> {
  // Its types describe the CommonJS build, whose function is a property; the module's is the function itself.
  const load = highsModule as unknown as typeof highsModule.default
  const highs = await load()
  return (program) => {
    const { Status, ObjectiveValue } = highs.solve(lpText(program), { output_flag: false })
    if (Status === 'Infeasible') return null
    if (Status !== 'Optimal') throw new Error(Status)
    return ObjectiveValue
  }
}

/** In the text form that HiGHS reads, with names of its own: those of the files are not allowed there. */
function lpText({ direction, rows, columns }: LinearProgram): string {
  const sum = (terms: [number, number][]) =>
    terms.length === 0
      ? '0 x0'
      : terms.map(([value, column]) => `${value < 0 ? '-' : '+'} ${Math.abs(value)} x${column}`).join('\n ')
  const cost = columns.map(({ cost }, column): [number, number] => [cost, column]).filter(([value]) => value !== 0)
  const lines = rows.flatMap(({ name, bound: { low, high } }, index) => {
    const terms = sum(
      columns.flatMap(({ entries }, column) =>
        entries.filter(({ row }) => row === name).map(({ value }): [number, number] => [value, column]),
      ),
    )
    if (low !== undefined && low === high) return [`e${index}: ${terms} = ${low}`]
    return [
      ...(low === undefined ? [] : [`g${index}: ${terms} >= ${low}`]),
      ...(high === undefined ? [] : [`l${index}: ${terms} <= ${high}`]),
    ]
  })
  const bounds = columns.flatMap(({ high }, column) => (high === undefined ? [] : [`x${column} <= ${high}`]))
  const integers = columns.flatMap(({ integer }, column) => (integer === true ? [`x${column}`] : []))
  return [
    direction,
    `cost: ${sum(cost)}`,
    'subject to',
    ...lines,
    'bounds',
    ...bounds,
    ...(integers.length === 0 ? [] : ['general', ...integers]),
    'end',
  ].join('\n')
}

const constraintOf = ({ low, high }: { low?: number; high?: number }): Constraint => ({
  ...(low === undefined ? {} : { min: low }),
  ...(high === undefined ? {} : { max: high }),
})

function* pairsOf(words: readonly string[]): Generator<[string, number]> {
  for (let i = 0; i + 1 < words.length; i += 2) yield [words[i]!, Number(words[i + 1])]
}
