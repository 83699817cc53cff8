import { costParts } from '../cost/cost-lines.ts'
import { guarded } from '../export/table/formula-guard.ts'
import { plain } from '../export/table/plain-number.ts'
import type { MonthReport } from './answer-types.ts'

type Cell = string | number | null

/**
 * A month as CSV (RFC 4180): a row a sump, one for the shop, one for all; litres and money as plain numbers with a full stop, named in the heading. No cell can be
 * run as a formula. The last line says which entries are in it.
 */
export function monthCsv({ month, cost, sumps, head }: MonthReport): string {
  const { currency } = cost
  const headings = [
    'Month',
    'Sump',
    `Cost (${currency})`,
    ...costParts.map((part) => `${part[0]!.toUpperCase()}${part.slice(1)} (${currency})`),
    'Mix poured (L)',
    'Concentrate poured (L)',
    'Water poured (L)',
    'Mix by level (L)',
    'Concentrate by level (L)',
    'Pours without an amount',
    'Machine hours (h)',
    'Stops',
    'Readings of strength',
    'Due',
    'Days in band',
    'Days under',
    'Days above',
    'Waste (L)',
  ]
  const money = (cents: number) => cents / 100
  const litres = ({ mix, concentrate, water, byLevel, unmeasured }: MonthReport['cost']['litres']): Cell[] => [
    mix,
    concentrate,
    water,
    byLevel.mix,
    byLevel.concentrate,
    unmeasured,
  ]
  const rows: Cell[][] = cost.sumps.map((one) => {
    const kept = sumps.find(({ sump }) => sump === one.sump)
    return [
      month,
      one.sump === null ? 'The shop' : one.name,
      money(one.cents),
      ...costParts.map((part) => money(one.parts[part])),
      ...litres(one.litres),
      one.machineHours,
      one.stops,
      kept?.readings.strength ?? null,
      kept?.readings.due ?? null,
      kept?.days?.inBand ?? null,
      kept?.days?.under ?? null,
      kept?.days?.above ?? null,
      one.wasteLitres,
    ]
  })
  const all = [
    month,
    'All',
    money(cost.cents),
    ...costParts.map((part) => money(cost.parts[part])),
    ...litres(cost.litres),
  ]
  const foot = [`Entries up to ${head.seq}, chain ${head.hash}`]
  return `\uFEFF${[headings, ...rows, all, foot].map(line).join('')}`
}

const line = (cells: readonly Cell[]) => `${cells.map(spelled).join(',')}\r\n`

function spelled(cell: Cell): string {
  if (cell === null) return ''
  if (typeof cell === 'number') return plain(cell)
  const text = guarded(cell)
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
