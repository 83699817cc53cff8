import {
  type LengthUnit,
  litresFrom,
  litresTo,
  message,
  type Reader,
  say,
  sayNumber,
  sayVolume,
  speech,
  type TemperatureUnit,
  type VolumeUnit,
} from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'

/** In what a shop types its volumes and dips, and how that is written at the field. */
export interface ShopUnits {
  volume: VolumeUnit
  /** "L", "gal". */
  volumeWord: string
  /** In full, where there is room, as a message: a US gallon is not an imperial one. */
  volumeName: string
  length: LengthUnit
  temperature: TemperatureUnit
  gallons: 'us' | 'imperial' | undefined
}

export const shopUnits: Readonly<Record<Units, ShopUnits>> = {
  metric: {
    volume: 'L',
    volumeWord: 'L',
    volumeName: message('litres'),
    length: 'mm',
    temperature: 'C',
    gallons: undefined,
  },
  us: {
    volume: 'us-gal',
    volumeWord: 'gal',
    volumeName: message('US gallons'),
    length: 'in',
    temperature: 'F',
    gallons: 'us',
  },
  imperial: {
    volume: 'imp-gal',
    volumeWord: 'gal',
    volumeName: message('imperial gallons'),
    length: 'in',
    temperature: 'C',
    gallons: 'imperial',
  },
}

export const readerOf = (units: Units): Reader => ({ units })

/** The decimal sign of a language, for a device's keys; some devices name languages that no standard knows ("C@posix"): a point. */
export function decimalSign(language: string): ',' | '.' {
  try {
    const parts = new Intl.NumberFormat(language).formatToParts(1.5)
    return parts.find(({ type }) => type === 'decimal')?.value === ',' ? ',' : '.'
  } catch (error) {
    if (error instanceof RangeError) return '.'
    throw error
  }
}

/** Litres as they stand in a field: in the shop's unit, no more digits than a person would type; what one count of a meter is may be little. */
export function fieldVolume(litres: number, units: Units): string {
  const amount = litresTo(litres, shopUnits[units].volume)
  return written(amount >= 0.1 ? Number(amount.toFixed(amount >= 100 ? 1 : 2)) : fieldRounded(amount))
}

/**
 * A figure as it stands in a field: to the hundredth, below 1 to four digits that count. Never three digits behind a point
 * with more than a nought before it: "5.667" can be read as five thousand, and is refused where it is typed.
 */
export const fieldFigure = (value: number): string => written(fieldRounded(value))

/** The figure that then stands there. */
export const fieldRounded = (value: number): number =>
  Math.abs(value) >= 1 ? Number(value.toFixed(2)) : Number(value.toPrecision(4))

/** A percentage as it stands in a field. */
export const fieldPercent = (percent: number, decimals = 2): string => written(Number(percent.toFixed(decimals)))

/** As whoever reads would type it: their decimal sign, no thousands. */
const written = (value: number): string => String(value).replace('.', decimalSign(speech().numbers))

/** "6–10 %", never parted at the sign. */
export const sayBand = ({ low, high }: { low: number; high: number }): string => `${short(low)}–${short(high)}\u00a0%`

/** A figure to the tenth, whole numbers bare. */
export const short = (value: number): string => sayNumber(value, Number.isInteger(Number(value.toFixed(1))) ? 0 : 1)

/** Money in the shop's currency: cents where it is little, whole where it is much. */
export function sayMoney(amount: number, currency: string): string {
  const decimals = Math.abs(amount) >= 1000 ? 0 : 2
  return moneyFormat(currency, decimals).format(amount)
}

/** What a litre costs, said for the shop's unit of volume, with three digits that count: "€0.0041 per L". */
export function sayPricePerVolume(perLitre: number, { currency, units }: { currency: string; units: Units }): string {
  const { volume, volumeWord } = shopUnits[units]
  const price = perLitre * litresFrom(1, volume)
  const decimals = price === 0 ? 2 : Math.min(8, Math.max(2, 2 - Math.floor(Math.log10(Math.abs(price)))))
  return say('{price} per {unit}', { price: moneyFormat(currency, decimals).format(price), unit: volumeWord })
}

const moneyFormat = (currency: string, decimals: number) =>
  new Intl.NumberFormat(speech().numbers, {
    style: 'currency',
    currency,
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  })

/** Litres a day in the shop's unit: "6.5 L a day". */
export const sayPerDay = (litres: number, units: Units): string =>
  say('{volume} a day', { volume: sayVolume(litres, readerOf(units)) })
