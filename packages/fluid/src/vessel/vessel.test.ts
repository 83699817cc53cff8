import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Vessel, vesselAt, vesselLevel, vesselRange, vesselTable, vesselVolume } from './vessel.ts'

const box = { kind: 'box', length: 1000, width: 500, height: 400 } as const

test('a vessel holds what its shape holds', () => {
  expect(vesselAt({ shapes: [box] }, 100)).toMatchObject({ outcome: 'volume', volume: 50, full: 200 })
})

test('a shape that stands on another counts from its own floor', () => {
  const stacked: Vessel = { shapes: [box, { ...box, length: 2000, height: 100, from: 400 }] }
  // 200 L below, then 1 L a millimetre
  expect(vesselVolume(stacked, 450)).toEqual({ outcome: 'volume', volume: 250 })
  expect(vesselRange(stacked)).toEqual({ low: 0, high: 500 })
})

test('shapes on one floor stand side by side', () => {
  expect(vesselVolume({ shapes: [box, box] }, 100)).toEqual({ outcome: 'volume', volume: 100 })
})

test('what stands in it takes up its litres evenly over the full depth', () => {
  expect(vesselAt({ shapes: [box], displaced: 40 }, 100)).toMatchObject({ volume: 40, full: 160 })
})

test('a table stands for the shapes', () => {
  const gauged: Vessel = {
    table: [
      [0, 0],
      [100, 60],
      [200, 130],
    ],
  }
  expect(vesselAt(gauged, 150)).toMatchObject({ outcome: 'volume', volume: 95, full: 130 })
  expect(vesselLevel(gauged, 95)).toEqual({ outcome: 'level', level: 150 })
})

test('the dip table has 21 evenly spaced rows, both ends included', () => {
  const rows = vesselTable({ shapes: [box] })
  expect(rows).toHaveLength(21)
  expect(rows[0]).toEqual([0, 0])
  expect(rows[1]).toEqual([20, 10])
  expect(rows[20]).toEqual([400, 200])
})

test('a level below the floor or above the brim is not a volume', () => {
  expect(vesselAt({ shapes: [box] }, 400.1)).toEqual({ outcome: 'outside', found: 400.1, low: 0, high: 400 })
  expect(vesselAt({ shapes: [box] }, -0.1)).toEqual({ outcome: 'outside', found: -0.1, low: 0, high: 400 })
  expect(vesselVolume({ shapes: [box] }, 400)).toEqual({ outcome: 'volume', volume: 200 })
  expect(vesselLevel({ shapes: [box] }, 201)).toEqual({ outcome: 'outside', found: 201, low: 0, high: 200 })
})

test.each<[string, Vessel]>([
  ['shapes is 0, expected at least one shape', { shapes: [] }],
  ['shapes.1.width is -1', { shapes: [box, { ...box, width: -1 }] }],
  ['displaced is 200, expected less than the 200 litres of the shapes', { shapes: [box], displaced: 200 }],
  ['displaced is -1', { shapes: [box], displaced: -1 }],
  ['table is 1', { table: [[0, 0]] }],
])('%s is refused', (message, vessel) => {
  expect(() => vesselAt(vessel, 10)).toThrow(message)
})

test('a level that is no number is refused', () => {
  expect(() => vesselAt({ shapes: [box] }, Number.NaN)).toThrow('level is NaN')
})

test('the level of a volume holds that volume, to the last bits', () => {
  const vessel: Vessel = {
    shapes: [
      { kind: 'horizontal-cylinder', diameter: 600, length: 1500 },
      { kind: 'frustum', bottomLength: 800, bottomWidth: 500, topLength: 1000, topWidth: 700, height: 300, from: 500 },
    ],
  }
  const rows = vesselTable(vessel)
  const full = rows.at(-1)![1]
  fc.assert(
    fc.property(fc.double({ min: 0, max: full, noNaN: true }), (volume) => {
      const found = vesselLevel(vessel, volume)
      if (found.outcome !== 'level') throw new Error('outside')
      expect(vesselVolume(vessel, found.level)).toEqual({ outcome: 'volume', volume: expect.closeTo(volume, 9) })
    }),
  )
})
