import { signs } from '@sumpbook/fluid'
import { expect, test } from 'vitest'
import { familiesWith, symptomsWith, toWriteDown } from './ticked.ts'

test('every sign of the list stands in one family, with what is ticked', () => {
  const families = familiesWith(new Set(['foam', 'rancid smell'] as const))
  expect(families.flatMap((family) => family.signs)).toHaveLength(signs.length)
  expect(families.map(({ ticked }) => ticked).filter((ticked) => ticked.length > 0)).toEqual([
    ['foam'],
    ['rancid smell'],
  ])
})

test('what is ticked takes the place of the signs of the book, in the order of the list', () => {
  const symptoms = { readings: { ph: 8 }, limits: {}, signs: ['slime'] as const }
  expect(symptomsWith(symptoms, new Set(['rancid smell', 'foam']))).toEqual({
    ...symptoms,
    signs: ['foam', 'rancid smell'],
  })
})

test('only what the journal does not have yet is written down', () => {
  expect(toWriteDown(new Set(['slime', 'foam']), ['foam'])).toEqual(['slime'])
})
