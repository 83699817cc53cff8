import { message } from '@sumpbook/fluid'

/** The order in which a date written with slashes or dashes names day, month and year. */
export type DateOrder = 'dmy' | 'mdy' | 'ymd'

export const dateOrders: readonly DateOrder[] = ['dmy', 'mdy', 'ymd']

/**
 * The order a heading announces: "dd/mm/yyyy", "TT.MM.JJJJ", "dd/mm/aaaa"; null where it announces none.
 *
 * @example orderSaid('mm/dd/yy') // 'mdy'
 */
export function orderSaid(text: string): DateOrder | null {
  const parts =
    /^(d{1,2}|t{1,2}|m{1,2}|y{2,4}|j{2,4}|a{2,4})[./\- ]?(d{1,2}|t{1,2}|m{1,2})[./\- ]?(d{1,2}|t{1,2}|m{1,2}|y{2,4}|j{2,4}|a{2,4})$/i.exec(
      text.trim(),
    )
  if (parts === null) return null
  const order = parts
    .slice(1)
    .map((part) => ({ d: 'd', t: 'd', m: 'm', y: 'y', j: 'y', a: 'y' })[part[0]!.toLowerCase()])
    .join('')
  return dateOrders.find((known) => known === order) ?? null
}

/** Examples for questions. */
export const orderWords: Record<DateOrder, string> = {
  dmy: message('day/month/year'),
  mdy: message('month/day/year'),
  ymd: message('year/month/day'),
}
