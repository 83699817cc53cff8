import type { summarise } from './measure.ts'

type Result = ReturnType<typeof summarise>

const columns: [string, (result: Result) => string][] = [
  ['now %', ({ figures }) => rmse(figures.concentration)],
  ['cover', ({ figures }) => cover(figures.concentration)],
  ['CRPS', ({ figures }) => String(figures.concentration?.crps ?? '')],
  ['+7 %', ({ figures }) => rmse(figures['concentration+7'])],
  ['cover', ({ figures }) => cover(figures['concentration+7'])],
  ['+14 %', ({ figures }) => rmse(figures['concentration+14'])],
  ['cover', ({ figures }) => cover(figures['concentration+14'])],
  ['vol med', ({ figures }) => middle(figures.volume)],
  ['cover', ({ figures }) => cover(figures.volume)],
  ['hard med', ({ figures }) => middle(figures.hardness)],
  ['cover', ({ figures }) => cover(figures.hardness)],
  ['evap med', ({ figures }) => middle(figures.evaporation)],
  ['cover', ({ figures }) => cover(figures.evaporation)],
  ['carry med', ({ figures }) => middle(figures.carryOff)],
  ['cover', ({ figures }) => cover(figures.carryOff)],
  ['cross d', ({ crossing }) => crossing.medianAbsoluteDays.toFixed(1)],
  ['misread', ({ doubts }) => `${doubts.misreads.found}/${doubts.misreads.of}`],
  ['missing', ({ doubts }) => `${doubts.missing.found}/${doubts.missing.of}`],
  ['false', ({ doubts }) => doubts.falseASumpAndHalfYear.toFixed(2)],
  ['ms', ({ milliseconds }) => String(milliseconds)],
  ['cpu ms', ({ busyMilliseconds }) => String(busyMilliseconds)],
]

type Line = Result['figures'][string] | undefined
const rmse = (line: Line) => line?.trimmedRmse.toFixed(2) ?? ''
const cover = (line: Line) => (line === undefined ? '' : `${(100 * line.coverage).toFixed(0)}%`)
const middle = (line: Line) => (line === undefined ? '' : `${line.medianErrorPercent.toFixed(0)}%`)

/** One line a peer: trimmed RMSE of concentration now and ahead, median errors of the rest, coverage of 90 % intervals. */
export function tableOf(results: readonly Result[]): string {
  const rows = [
    ['', ...columns.map(([title]) => title)],
    ...results.map((result) => [result.name, ...columns.map(([, of]) => of(result))]),
  ]
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)))
  const text = (row: string[]) =>
    row.map((cell, column) => (column === 0 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!))).join('  ')
  return `${rows.map(text).join('\n')}\n`
}
