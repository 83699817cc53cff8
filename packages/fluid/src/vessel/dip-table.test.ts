import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type DipTable, levelAt, volumeAt } from './dip-table.ts'

const table: DipTable = [
  [20, 10],
  [100, 60],
  [200, 130],
]

test('on a row the table gives what stands there', () => {
  for (const [level, volume] of table) {
    expect(volumeAt(table, level)).toEqual({ outcome: 'volume', volume })
    expect(levelAt(table, volume)).toEqual({ outcome: 'level', level })
  }
})

test('between two rows the volume rises evenly', () => {
  expect(volumeAt(table, 150)).toEqual({ outcome: 'volume', volume: 95 })
  expect(levelAt(table, 95)).toEqual({ outcome: 'level', level: 150 })
})

test('beyond its ends the table says where it ends', () => {
  expect(volumeAt(table, 19.9)).toEqual({ outcome: 'outside', found: 19.9, low: 20, high: 200 })
  expect(volumeAt(table, 200.1)).toEqual({ outcome: 'outside', found: 200.1, low: 20, high: 200 })
  expect(levelAt(table, 131)).toEqual({ outcome: 'outside', found: 131, low: 10, high: 130 })
})

test('where the table is flat, the lowest level with that volume is given', () => {
  const stepped: DipTable = [
    [0, 0],
    [50, 0],
    [100, 30],
    [150, 30],
    [200, 80],
  ]
  expect(levelAt(stepped, 0)).toEqual({ outcome: 'level', level: 0 })
  expect(levelAt(stepped, 30)).toEqual({ outcome: 'level', level: 100 })
  expect(volumeAt(stepped, 120)).toEqual({ outcome: 'volume', volume: 30 })
})

test.each<[string, DipTable]>([
  ['table is 1, expected at least 2 rows', [[0, 0]]],
  [
    'table.0.0 is -1',
    [
      [-1, 0],
      [10, 5],
    ],
  ],
  [
    'table.1.0 is 10',
    [
      [10, 0],
      [10, 5],
    ],
  ],
  [
    'table.1.1 is 4, expected at least 5',
    [
      [0, 5],
      [10, 4],
    ],
  ],
  [
    'table.1.1 is 5, expected above 5',
    [
      [0, 5],
      [10, 5],
    ],
  ],
  [
    'table.1.1 is NaN',
    [
      [0, 5],
      [10, Number.NaN],
    ],
  ],
])('%s is refused', (message, rows) => {
  expect(() => volumeAt(rows, 5)).toThrow(message)
})

test('a level or a volume that is no number is refused', () => {
  expect(() => volumeAt(table, Number.NaN)).toThrow('level is NaN')
  expect(() => levelAt(table, Number.NaN)).toThrow('volume is NaN')
})

test('the level of a volume holds that volume', () => {
  const step = fc.tuple(fc.double({ min: 1, max: 100, noNaN: true }), fc.double({ min: 1, max: 100, noNaN: true }))
  fc.assert(
    fc.property(
      fc.array(step, { minLength: 2, maxLength: 20 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (steps, part) => {
        let [mm, litres] = [0, 0]
        const rows = steps.map(([up, more]) => {
          ;[mm, litres] = [mm + up, litres + more]
          return [mm, litres] as const
        })
        const [low, high] = [rows[0]![1], rows.at(-1)![1]]
        const volume = Math.min(high, low + part * (high - low))
        const found = levelAt(rows, volume)
        if (found.outcome !== 'level') throw new Error('outside')
        expect(volumeAt(rows, found.level)).toEqual({ outcome: 'volume', volume: expect.closeTo(volume, 9) })
      },
    ),
  )
})
