import fc from 'fast-check'
import { expect, test } from 'vitest'
import { curvatureOf } from './curvature.ts'

const points = (...ys: number[]) => ys.map((y, index) => ({ x: index + 1, y }))

test('a parabola is bent, a line is not', () => {
  expect(curvatureOf(points(1, 4, 9, 16, 25))).toMatchObject({ bent: true })
  expect(curvatureOf(points(1, 3, 5, 7, 9))).toEqual({ bent: false, farthest: 0 })
})

test('how far it bends is in units of x', () => {
  // 1, 4, 9, 16 and 25 on the line −7 + 6 x: residuals 2, −1, −2, −1, 2, the farthest 2, / 6
  expect(curvatureOf(points(1, 4, 9, 16, 25))!.farthest).toBeCloseTo(1 / 3, 10)
})

test('a bend within the scatter is none', () => {
  // Residuals +, −, +, −, +, −: all scatter.
  expect(curvatureOf(points(1.1, 1.9, 3.1, 3.9, 5.1, 5.9))).toMatchObject({ bent: false })
})

test('through zero two different places are enough to bend', () => {
  const doubled = [
    { x: 1, y: 1 },
    { x: 1, y: 1.01 },
    { x: 2, y: 3 },
    { x: 2, y: 3.01 },
  ]
  expect(curvatureOf(doubled, { throughZero: true })).toMatchObject({ bent: true })
  expect(curvatureOf(doubled)).toBeNull()
})

test('where nothing is left to judge by it says nothing', () => {
  expect(curvatureOf(points(1, 4, 9))).toBeNull()
})

test('turning the points over leaves the judgement', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 5, maxLength: 12 }), (ys) => {
      const [found, turned] = [curvatureOf(points(...ys)), curvatureOf(points(...ys.map((y) => -y)))]
      expect(turned!.bent).toBe(found!.bent)
    }),
  )
})
