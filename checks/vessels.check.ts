/**
 * Volumes of tanks and dip tables.
 *
 * Lying cylinders: tank-gauging worked examples, read in a copy (48 in across, 96 in long, dip 19.2 in: 280.9 of 752.0 US gal; radius 0.725 m, 10 m long, level
 * 0.2 m below the top: 15.138 m³; 2 m across, 5 m long, half full: 7.854 m³). Fault found in a source: radius 3 ft, 20 ft long, 2 ft deep was
 * published as 136.72 ft³; the segment's area gives 165.00, computed here. Box, frustum and cone frustum: computed here from the
 * definitions. Tolerance everywhere: half of the last digit given.
 * Straight lines between the rows of a dip table, on steps of 5 % of a lying cylinder's diameter: 0.27 % of the full volume at worst, computed here.
 */
import { expect, test } from 'vitest'
import {
  litresTo,
  millimetresFrom,
  type Shape,
  shapeVolume,
  vesselAt,
  vesselTable,
  volumeAt,
} from '../packages/fluid/src/index.ts'

const inches = (value: number) => millimetresFrom(value, 'in')
const feet = (value: number) => millimetresFrom(value, 'ft')

test('a lying cylinder of 48 × 96 in holds 280.9 US gal at 19.2 in and 752.0 when full', () => {
  const tank: Shape = { kind: 'horizontal-cylinder', diameter: inches(48), length: inches(96) }
  const at = vesselAt({ shapes: [tank] }, inches(19.2))
  if (at.outcome !== 'volume') throw new Error(at.outcome)
  expect(litresTo(at.volume, 'us-gal')).toBeCloseTo(280.9, 1)
  expect(litresTo(at.full, 'us-gal')).toBeCloseTo(752.0, 1)
})

test('a lying cylinder of radius 0.725 m and 10 m length holds 15.138 m³ up to 0.2 m below its top', () => {
  expect(shapeVolume({ kind: 'horizontal-cylinder', diameter: 1450, length: 10_000 }, 1250) / 1000).toBeCloseTo(
    15.138,
    3,
  )
})

test('a lying cylinder of 2 m across and 5 m length holds 7.854 m³ half full', () => {
  expect(shapeVolume({ kind: 'horizontal-cylinder', diameter: 2000, length: 5000 }, 1000) / 1000).toBeCloseTo(7.854, 3)
})

test('a lying cylinder of radius 3 ft and 20 ft length holds 165.00 ft³ at 2 ft', () => {
  const litres = shapeVolume({ kind: 'horizontal-cylinder', diameter: feet(6), length: feet(20) }, feet(2))
  expect(litres / (304.8 ** 3 / 1e6)).toBeCloseTo(165.0, 2)
})

test('a box of 1.2 × 0.6 × 0.35 m holds 252 L', () => {
  expect(shapeVolume({ kind: 'box', length: 1200, width: 600, height: 350 }, 350)).toBeCloseTo(252, 10)
})

test('a trough of 2 × 1 m over 1.6 × 0.8 m, 0.5 m deep, holds 0.8133 m³', () => {
  const bottom = { bottomLength: 1600, bottomWidth: 800 }
  const top = { topLength: 2000, topWidth: 1000 }
  expect(shapeVolume({ kind: 'frustum', ...bottom, ...top, height: 500 }, 500) / 1000).toBeCloseTo(0.8133, 4)
})

test('a cone frustum of radii 6 and 3 and height 10 holds 659.73', () => {
  const shape: Shape = { kind: 'cone-frustum', bottomDiameter: 12_000, topDiameter: 6000, height: 10_000 }
  expect(shapeVolume(shape, 10_000) / 1000).toBeCloseTo(659.73, 2)
})

test('on steps of 5 percent a dip table misses a lying cylinder by 0.27 percent of full at worst', () => {
  const tank: Shape = { kind: 'horizontal-cylinder', diameter: 1000, length: 2000 }
  const full = shapeVolume(tank, 1000)
  const rows = vesselTable({ shapes: [tank] })
  const misses = Array.from({ length: 2001 }, (_, step) => {
    const at = volumeAt(rows, step / 2)
    if (at.outcome !== 'volume') throw new Error(at.outcome)
    return Math.abs(at.volume - shapeVolume(tank, step / 2)) / full
  })
  expect(100 * Math.max(...misses)).toBeCloseTo(0.27, 2)
})
