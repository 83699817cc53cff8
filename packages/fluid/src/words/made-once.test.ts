import { expect, test } from 'vitest'
import { madeOnce } from './made-once.ts'

/** Counts how often something is made of two keys. */
function counted(most: number) {
  const made: string[] = []
  const keep = madeOnce<string, number, string>(most)
  const of = (a: string, b: number) =>
    keep(a, b, () => {
      made.push(`${a}${b}`)
      return `${a}${b}`
    })
  return { of, made }
}

test('what both keys name is made once', () => {
  const { of, made } = counted(10)
  expect([of('x', 1), of('x', 2), of('y', 1), of('x', 1)]).toEqual(['x1', 'x2', 'y1', 'x1'])
  expect(made).toEqual(['x1', 'x2', 'y1'])
})

test('no more are kept than it is told to, over all first keys together', () => {
  const { of, made } = counted(2)
  for (const a of ['x', 'y', 'z']) of(a, 1)
  of('z', 1)
  expect(made).toEqual(['x1', 'y1', 'z1'])
  of('x', 1)
  expect(made).toEqual(['x1', 'y1', 'z1', 'x1'])
})
