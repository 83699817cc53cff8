import { madeOnce, say, speech } from '../words/index.ts'

/** How a person reads figures: the system of units, and the language whose number signs are used. */
export interface Reader {
  units: 'metric' | 'us' | 'imperial'
  /** BCP 47, of number signs; without it, that of whoever is spoken to. */
  locale?: string
}

const litresPer = { metric: 1, us: 3.785411784, imperial: 4.54609 } as const
const volumeUnit = { metric: 'L', us: 'gal', imperial: 'gal' } as const

/** A number to a count of decimals (zeros at the end kept down to `leastDecimals`), in the reader's number signs. Never "−0". */
export function sayNumber(
  value: number,
  decimals: number,
  { locale = speech().numbers }: Pick<Reader, 'locale'> = {},
  leastDecimals = decimals,
): string {
  const rounded = Number(value.toFixed(decimals))
  const key = `${locale} ${leastDecimals} ${decimals}`
  const figure = rounded === 0 ? 0 : rounded
  return written(key, figure, () => {
    const isLarge = Math.abs(figure) >= 10_000
    return formats(key, isLarge, () => {
      const digits = { minimumFractionDigits: leastDecimals, maximumFractionDigits: decimals }
      return new Intl.NumberFormat(locale, { ...digits, useGrouping: isLarge })
    }).format(figure)
  })
}

/** Making a format takes a hundred times as long as using it. */
const formats = madeOnce<string, boolean, Intl.NumberFormat>(1000)
/** The figures of a large shop are some thousand, said again and again. */
const written = madeOnce<string, number, string>(20_000)

/** Litres in the reader's unit: to the tenth, large amounts whole, less than one to the hundredth, no zeros at the end. */
export function sayVolume(litres: number, reader: Reader): string {
  const amount = litres / litresPer[reader.units]
  const decimals = volumeDecimals(amount, reader.units)
  return `${sayNumber(amount, decimals, reader, 0)} ${volumeUnit[reader.units]}`
}

/** Two parts of a whole, so that the parts as written add up to the whole as written: the second is the rest. */
export function sayParts(whole: number, part: number, reader: Reader): { part: string; rest: string } {
  const unit = litresPer[reader.units]
  const written = (litres: number) => Number((litres / unit).toFixed(volumeDecimals(litres / unit, reader.units)))
  const rest = written(whole) - written(part)
  return { part: sayVolume(part, reader), rest: sayVolume(rest * unit, reader) }
}

/** Percent to the tenth. */
export function sayPercent(percent: number, reader: Reader): string {
  return `${sayNumber(percent, 1, reader)} %`
}

/** Percent to the tenth, whole numbers bare: what somebody sets a mixer to. */
export function sayStrength(percent: number, reader: Reader): string {
  const tenths = Number(percent.toFixed(1))
  return `${sayNumber(percent, Number.isInteger(tenths) ? 0 : 1, reader)} %`
}

/** A concentration with its central 90 % interval, "6.1 % (5.6–6.6)". */
export function sayConcentration(figure: { mean: number; low90: number; high90: number }, reader: Reader): string {
  const [low, high] = [sayNumber(figure.low90, 1, reader), sayNumber(figure.high90, 1, reader)]
  return low === high ? sayPercent(figure.mean, reader) : `${sayPercent(figure.mean, reader)} (${low}–${high})`
}

/** From one amount to another, both written with their unit, which is said once: "190 to 210 L". */
export function sayBetween(low: string, high: string): string {
  const unit = / .+$/.exec(high)?.[0] ?? ''
  const from = unit !== '' && low.endsWith(unit) ? low.slice(0, -unit.length) : low
  return say('{low} to {high}', { low: from, high })
}

function volumeDecimals(amount: number, units: Reader['units']): number {
  const size = Math.abs(amount)
  if (size >= 100) return 0
  if (units === 'metric') return size >= 1 ? 1 : 2
  return size >= 10 ? 1 : 2
}
