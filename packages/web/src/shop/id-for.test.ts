import { expect, test } from 'vitest'
import { idFor } from './id-for.ts'

test('a name becomes an id of plain letters; one that is taken gets a number', () => {
  expect(idFor('Fräse 7', new Set(), 'sump')).toBe('frase-7')
  expect(idFor('Mill 7', new Set(['mill-7']), 'sump')).toBe('mill-7-2')
  expect(idFor('七', new Set(['sump']), 'sump')).toBe('sump-2')
})
