import { expect, test } from 'vitest'
import { noDates, settleDates, weighDate } from './date-evidence.ts'
import type { DateOrder } from './date-order.ts'

function settled(texts: string[], said?: DateOrder) {
  const evidence = noDates()
  for (const text of texts) weighDate(evidence, text)
  return settleDates(evidence, said)
}

test.each([
  ['a day above 12 in front', ['03/04/2026', '13/04/2026'], 'dmy'],
  ['a day above 12 in the middle', ['03/04/2026', '04/13/2026'], 'mdy'],
  ['dots', ['05.10.2026', '06.10.2026'], 'dmy'],
  ['ISO', ['2026-10-05'], 'ymd'],
  ['the same number twice, which is one day either way', ['05/05/2026'], 'dmy'],
] as const)('%s settles the order', (_, texts, order) => {
  expect(settled([...texts])).toEqual({ order, question: null })
})

test('12 in front settles nothing: there is a twelfth month', () => {
  expect(settled(['12/04/2026']).order).toBeNull()
})

test('without evidence the order is asked, with an example of the sheet', () => {
  const { order, question } = settled(['03/04/2026', '05/06/2026'])
  expect(order).toBeNull()
  expect(question).toMatchObject({ pointer: '/dates', choices: ['dmy', 'mdy'] })
  expect(question?.question).toContain('03/04/2026')
})

test('dates that contradict each other are asked about', () => {
  expect(settled(['13/04/2026', '04/13/2026']).question?.pointer).toBe('/dates')
})

test('what a person says goes before the evidence', () => {
  expect(settled(['13/04/2026'], 'mdy')).toEqual({ order: 'mdy', question: null })
})
