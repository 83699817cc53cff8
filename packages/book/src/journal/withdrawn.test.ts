import { expect, test } from 'vitest'
import { withdrawnBy } from './withdrawn.ts'

const of = (...pairs: [string, string][]) => [...withdrawnBy(pairs.map(([id, target]) => ({ id, target })))].sort()

test('a void withdraws its entry', () => {
  expect(of(['v', 'a'])).toEqual(['a'])
})

test('a void of a void lets the entry stand again', () => {
  expect(of(['v', 'a'], ['w', 'v'])).toEqual(['v'])
})

test('two voids of one entry: it falls as long as one of them stands', () => {
  expect(of(['v', 'a'], ['u', 'a'], ['w', 'v'])).toEqual(['a', 'v'])
})

test('voids in a circle all fall', () => {
  expect(of(['v', 'w'], ['w', 'v'])).toEqual(['v', 'w'])
  expect(of(['v', 'v'])).toEqual(['v'])
})

test('a circle whose member is withdrawn from outside falls too', () => {
  expect(of(['v', 'w'], ['w', 'v'], ['x', 'v'])).toEqual(['v'])
})

test('a long chain alternates', () => {
  const chain = Array.from({ length: 100_001 }, (_, i): [string, string] => [`v${i + 1}`, `v${i}`])
  const withdrawn = new Set(of(...chain))
  expect(withdrawn.has('v100000')).toBe(true)
  expect(withdrawn.has('v99999')).toBe(false)
})
