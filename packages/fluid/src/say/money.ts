import type { Cents } from '../cost/money.ts'
import { speech } from '../words/index.ts'
import type { Reader } from './units.ts'

/** How money is said: in which currency (ISO 4217), with whose number signs. */
export interface MoneyReader extends Pick<Reader, 'locale'> {
  currency: string
}

/** Money to the last coin of its currency: "€412.37", "¥412". Never "−0". */
export const sayCents = (cents: Cents, { currency, locale = speech().numbers }: MoneyReader): string =>
  formatOf(locale, currency, false).format(cents === 0 ? 0 : cents / 100)

/** Money in whole units: "€412". */
export const sayWholeMoney = (cents: Cents, { currency, locale = speech().numbers }: MoneyReader): string =>
  formatOf(locale, currency, true).format(Math.round(cents / 100) === 0 ? 0 : cents / 100)

/** Under this, money is said to the coin in sentences. */
const wholeFrom: Cents = 10_000

/** Money in a sentence: to the coin where it is little, whole from a hundred on. */
export const sayMoney = (cents: Cents, reader: MoneyReader): string =>
  Math.abs(cents) >= wholeFrom ? sayWholeMoney(cents, reader) : sayCents(cents, reader)

/** Money with its interval: "€38 (€20–€61)". */
export function sayMoneyBetween(
  { mean, low, high }: { mean: Cents; low: Cents; high: Cents },
  reader: MoneyReader,
): string {
  const [from, to] = [sayWholeMoney(low, reader), sayWholeMoney(high, reader)]
  return from === to ? sayWholeMoney(mean, reader) : `${sayWholeMoney(mean, reader)} (${from}–${to})`
}

/** Making a format takes far longer than using it: each is made once. */
const formats = new Map<string, Intl.NumberFormat>()

function formatOf(locale: string, currency: string, whole: boolean): Intl.NumberFormat {
  const key = `${locale} ${currency} ${whole}`
  const known = formats.get(key)
  if (known !== undefined) return known
  const digits = whole ? { minimumFractionDigits: 0, maximumFractionDigits: 0 } : {}
  const format = new Intl.NumberFormat(locale, { style: 'currency', currency, ...digits })
  formats.set(key, format)
  return format
}
