import { expect, test } from 'vitest'
import { grown, withText } from './rows.ts'

const keys = ['dial', 'percent'] as const
const row = (dial: string, percent = '') => ({ dial, percent })

test('typing into the last row adds an empty one, emptying it takes that one away', () => {
  const rows = withText(grown<'dial' | 'percent'>([], keys), { index: 0, key: 'dial', text: '1' })
  expect(rows).toEqual([row('1'), row('')])
  expect(withText(rows, { index: 0, key: 'dial', text: '' })).toEqual([row('')])
})

test('an empty row between two stays where it is', () => {
  expect(grown([row('1'), row(''), row('3')], keys)).toEqual([row('1'), row(''), row('3'), row('')])
})

test('there are as many rows as were asked for, and always an empty last one', () => {
  expect(grown([row('1')], keys, 3)).toHaveLength(3)
  expect(grown([row('1'), row('2'), row('3')], keys, 3)).toHaveLength(4)
})
