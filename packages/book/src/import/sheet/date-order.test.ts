import { expect, test } from 'vitest'
import { orderSaid } from './date-order.ts'

test.each([
  ['dd/mm/yyyy', 'dmy'],
  ['MM/DD/YY', 'mdy'],
  ['TT.MM.JJJJ', 'dmy'],
  ['dd/mm/aaaa', 'dmy'],
  ['yyyy-mm-dd', 'ymd'],
  ['date', null],
  ['mm/mm/yyyy', null],
])('a heading with "%s" announces %s', (text, expected) => {
  expect(orderSaid(text)).toBe(expected)
})
