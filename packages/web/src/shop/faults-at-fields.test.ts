import { expect, test } from 'vitest'
import { firstDayFields } from './all-fields.ts'
import { faultsAtFields } from './faults-at-fields.ts'

test('the server’s faults go to their fields', () => {
  const { at, rest } = faultsAtFields(
    [
      { pointer: '/changes/limits/concentration/low', found: '7', expected: 'low ≤ target ≤ high' },
      { pointer: '/at', found: 'tomorrow', expected: 'not after now' },
    ],
    firstDayFields.fluid,
  )
  expect(Object.keys(at)).toEqual(['limits.concentration.low'])
  expect(rest).toEqual(['/at: found tomorrow, expected not after now'])
})
