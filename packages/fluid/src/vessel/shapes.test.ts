import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Shape, shapeHeight, shapeVolume } from './shapes.ts'

const size = fc.double({ min: 1, max: 5000, noNaN: true })
const anyShape: fc.Arbitrary<Shape> = fc.oneof(
  fc.record({ kind: fc.constant('box' as const), length: size, width: size, height: size }),
  fc.record({ kind: fc.constant('horizontal-cylinder' as const), diameter: size, length: size }),
  fc.record({ kind: fc.constant('vertical-cylinder' as const), diameter: size, height: size }),
  fc.record({
    kind: fc.constant('frustum' as const),
    bottomLength: size,
    bottomWidth: size,
    topLength: size,
    topWidth: size,
    height: size,
  }),
  fc.record({ kind: fc.constant('cone-frustum' as const), bottomDiameter: size, topDiameter: size, height: size }),
)

test('a box holds length times width times depth', () => {
  // 1.2 m × 0.6 m × 0.1 m = 0.072 m³
  expect(shapeVolume({ kind: 'box', length: 1200, width: 600, height: 350 }, 100)).toBeCloseTo(72, 12)
})

test('a lying cylinder half full holds half', () => {
  const tank: Shape = { kind: 'horizontal-cylinder', diameter: 2000, length: 5000 }
  expect(shapeVolume(tank, 1000)).toBeCloseTo((Math.PI * 5000) / 2, 9)
  expect(shapeVolume(tank, 2000)).toBeCloseTo(Math.PI * 5000, 9)
})

test('a trough with straight sides is a box', () => {
  const sides = { bottomLength: 1200, bottomWidth: 600, topLength: 1200, topWidth: 600, height: 350 }
  expect(shapeVolume({ kind: 'frustum', ...sides }, 175)).toBeCloseTo(126, 12)
})

test('a tub with straight sides is a standing cylinder', () => {
  const tub = shapeVolume({ kind: 'cone-frustum', bottomDiameter: 600, topDiameter: 600, height: 900 }, 400)
  expect(tub).toBeCloseTo(shapeVolume({ kind: 'vertical-cylinder', diameter: 600, height: 900 }, 400), 12)
})

test('a cone down to its tip holds a third of the cylinder about it', () => {
  // π × 0.3² × 0.9 / 3 = 0.084823 m³
  expect(shapeVolume({ kind: 'cone-frustum', bottomDiameter: 0, topDiameter: 600, height: 900 }, 900)).toBeCloseTo(
    84.823,
    3,
  )
})

test('below the floor there is nothing and above the top no more', () => {
  const box: Shape = { kind: 'box', length: 1000, width: 1000, height: 100 }
  expect(shapeVolume(box, -5)).toBe(0)
  expect(shapeVolume(box, 500)).toBe(100)
})

test('a lying cylinder is as high as its diameter', () => {
  expect(shapeHeight({ kind: 'horizontal-cylinder', diameter: 700, length: 2000 })).toBe(700)
})

test.each<[string, Shape, number]>([
  ['length is 0, expected above 0', { kind: 'box', length: 0, width: 1, height: 1 }, 0],
  ['diameter is -5', { kind: 'vertical-cylinder', diameter: -5, height: 1 }, 0],
  ['height is NaN', { kind: 'box', length: 1, width: 1, height: Number.NaN }, 0],
  ['topDiameter is 0, expected above 0', { kind: 'cone-frustum', bottomDiameter: 0, topDiameter: 0, height: 5 }, 0],
  ['from is -1', { kind: 'box', length: 1, width: 1, height: 1, from: -1 }, 0],
  ['depth is NaN', { kind: 'box', length: 1, width: 1, height: 1 }, Number.NaN],
])('%s is refused', (message, shape, depth) => {
  expect(() => shapeVolume(shape, depth)).toThrow(message)
})

test('higher up there is never less', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(anyShape, share, share, (shape, one, other) => {
      const [low, high] = [Math.min(one, other), Math.max(one, other)].map((part) => part * shapeHeight(shape))
      expect(shapeVolume(shape, high!)).toBeGreaterThanOrEqual(
        shapeVolume(shape, low!) - 1e-12 * shapeVolume(shape, shapeHeight(shape)),
      )
    }),
  )
})

test('turned over, what is below the level and what is above it make the whole', () => {
  fc.assert(
    fc.property(anyShape, fc.double({ min: 0, max: 1, noNaN: true }), (shape, part) => {
      const height = shapeHeight(shape)
      const full = shapeVolume(shape, height)
      const rest = shapeVolume(turned(shape), height * (1 - part))
      expect(Math.abs(shapeVolume(shape, height * part) + rest - full)).toBeLessThan(1e-9 * full)
    }),
  )
})

function turned(shape: Shape): Shape {
  if (shape.kind === 'frustum') {
    const { bottomLength, bottomWidth, topLength, topWidth } = shape
    return { ...shape, bottomLength: topLength, bottomWidth: topWidth, topLength: bottomLength, topWidth: bottomWidth }
  }
  if (shape.kind === 'cone-frustum') {
    return { ...shape, bottomDiameter: shape.topDiameter, topDiameter: shape.bottomDiameter }
  }
  return shape
}
