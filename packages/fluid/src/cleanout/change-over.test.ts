import { expect, test } from 'vitest'
import { changeOver, type FluidTold } from './change-over.ts'

const mix = (
  id: string,
  contains: readonly string[] | null = [],
  of: FluidTold['class'] = 'semi-synthetic',
): FluidTold => ({
  id,
  class: of,
  contains,
})

test('the same product may meet itself', () => {
  expect(changeOver(mix('a'), mix('a'))).toEqual({ outcome: 'same-product' })
})

test('a straight oil and a water-mix never meet, either way round', () => {
  const oil = mix('o', null, 'straight-oil')
  expect(changeOver(oil, mix('a'))).toEqual({ outcome: 'never-meet', because: ['oil-and-water'] })
  expect(changeOver(mix('a'), oil)).toEqual({ outcome: 'never-meet', because: ['oil-and-water'] })
})

test('nitrite and amines never meet, either way round, however they are written', () => {
  const because = ['nitrite-and-amines']
  expect(changeOver(mix('a', ['Nitrite']), mix('b', ['secondary amines']))).toEqual({ outcome: 'never-meet', because })
  expect(changeOver(mix('a', ['amine']), mix('b', ['sodium nitrite']))).toEqual({ outcome: 'never-meet', because })
})

test('of everything else the suppliers know, and what is not known is said', () => {
  expect(changeOver(mix('a'), mix('b'))).toEqual({ outcome: 'supplier-first', because: ['other-product'] })
  expect(changeOver(mix('a', null), mix('b', [], 'synthetic'))).toEqual({
    outcome: 'supplier-first',
    because: ['contents-unknown', 'other-class'],
  })
  expect(changeOver(mix('a', null, null), mix('b', [], 'straight-oil'))).toMatchObject({ outcome: 'supplier-first' })
})
