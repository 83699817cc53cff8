import { message, rangeOf, say, sayCourse, trendOf } from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { BookError } from '../errors.ts'
import { utc } from '../journal/order.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Entry, Reading } from '../schema/entries/index.ts'
import type { Value } from '../schema/values.ts'
import type { AnalyteSeries } from './answer-types.ts'

/** Fields of a reading that are followed like an analyte. */
const fields = [
  ['ph', 'pH', ''],
  ['hardness', message('hardness'), 'mg/L as CaCO3'],
  ['chloride', message('chloride'), 'mg/L'],
  ['sulfate', message('sulfate'), 'mg/L'],
  ['nitrate', message('nitrate'), 'mg/L'],
  ['nitrite', message('nitrite'), 'mg/L'],
  ['conductivity', message('conductivity'), 'mS/cm'],
  ['bacteria', message('bacteria'), 'CFU/mL'],
  ['fungi', message('fungi'), 'CFU/mL'],
  ['trampOil', message('tramp oil'), '%'],
  ['dissolvedOxygen', message('oxygen'), 'mg/L'],
] as const

/** What a laboratory calls otherwise keeps the laboratory's name. */
const fieldNames: ReadonlySet<string> = new Set(fields.map(([, name]) => name))

/** Germs grow by powers of ten: their trend is that of the exponent. */
const counted: ReadonlySet<string> = new Set(['bacteria', 'fungi'])

/**
 * Everything that was measured of a sump but strength and level, whatever a laboratory calls it, each with its trend.
 *
 * @throws {BookError} `not-found` a sump the book does not have
 */
export async function readAnalytes(
  { journal, things }: Pick<BookParts, 'journal' | 'things'>,
  sump: string,
  { at, until: last = at }: { at: Date; until?: Date },
): Promise<{ sump: string; series: AnalyteSeries[] }> {
  const until = last.toISOString()
  if (!(await things()).at(until).sump.has(sump)) {
    throw new BookError('not-found', `This book has no sump "${sump}".`)
  }
  const [entries, voids] = await Promise.all([
    journal.entries({ sump, kinds: ['reading', 'charge'], order: 'time', until }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const series = new Map<string, AnalyteSeries>()
  let charge: string | null = null
  for (const { id, body } of entries.filter((stored) => !withdrawn.has(stored.id))) {
    const entry = JSON.parse(body) as Entry
    if (entry.kind === 'charge') charge = id
    if (entry.kind !== 'reading') continue
    for (const { name, unit, value, method, lab } of foundIn(entry)) {
      const key = `${name.toLowerCase()} ${unit}`
      const one = series.get(key) ?? { name, unit, isCount: counted.has(name), points: [], trend: null, says: '' }
      one.points.push({ entry: id, at: utc(entry.at), value, charge, method, lab })
      series.set(key, one)
    }
  }
  return { sump, series: [...series.values()].map((one) => withTrend(one, charge)) }
}

function* foundIn(reading: Reading) {
  const { method = null } = reading
  for (const [field, name, unit] of fields) {
    const value = reading[field]
    if (value !== undefined) yield { name, unit, value: value as Value, method, lab: null }
  }
  for (const { name, unit = '', value, method: how = method, lab = null } of reading.analytes ?? []) {
    if (value !== undefined) yield { name, unit, value: value as Value, method: how, lab }
  }
}

function withTrend(series: AnalyteSeries, charge: string | null): AnalyteSeries {
  const trend = trendNow(series, charge)
  const name = fieldNames.has(series.name) ? say(series.name) : series.name
  return { ...series, name, trend, says: sayCourse(trend, series) }
}

const weekMs = 7 * 86_400_000

/** A class with two ends stands at its middle, one with a single end nowhere. */
function trendNow({ isCount, points }: AnalyteSeries, charge: string | null): AnalyteSeries['trend'] {
  const figures = points
    .filter((point) => point.charge === charge)
    .flatMap(({ at, value }) => {
      const { low, high } = rangeOf(value)
      if (!Number.isFinite(high) || (typeof value === 'object' && !('low' in value))) return []
      const figure = isCount ? (low > 0 ? (Math.log10(low) + Math.log10(high)) / 2 : Number.NaN) : (low + high) / 2
      return Number.isFinite(figure) ? [{ at: Date.parse(at) / weekMs, value: figure }] : []
    })
    .slice(-500)
  if (new Set(figures.map(({ at }) => at)).size < 3) return null
  const { slope, low, high, direction, n } = trendOf(figures)
  return { slope, low, high, direction, n }
}
