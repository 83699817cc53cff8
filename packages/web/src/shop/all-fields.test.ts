import { expect, test } from 'vitest'
import { allFields, newSumpFields } from './all-fields.ts'

test('a new sump’s form has all fields of a sump, some of them folded away', () => {
  const paths = [...newSumpFields.first, ...newSumpFields.later].map(({ path }) => path)
  expect(newSumpFields.first.map(({ path }) => path)).toEqual(['name', 'fillVolume'])
  expect(paths.toSorted()).toEqual(allFields.sump.map(({ path }) => path).toSorted())
})
