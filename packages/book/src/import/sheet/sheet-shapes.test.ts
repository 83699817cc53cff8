import { describe, expect, test } from 'vitest'
import type { SheetMap } from '../sheet-types.ts'
import type { MemoryBook } from './memory-book.ts'
import { csv, metric, plainly, refused, take, us } from './testing.ts'

describe('shapes that shops use', () => {
  const bySump = (book: MemoryBook) =>
    book.entries.map((one) =>
      [
        'sump' in one && one.sump,
        ...(['brix', 'ph', 'volume', 'hardness'] as const).flatMap((field) => (field in one ? [field] : [])),
      ].join(' '),
    )

  test.each([
    ['machine and field in one heading', 'Date,Mill 7 Brix,Mill 7 pH,Lathe 2 level (L)\n2026-10-05,3.4,9,300\n'],
    ['fields under merged machines', ',Mill 7,,Lathe 2\nDate,Brix,pH,Level (L)\n2026-10-05,3.4,9,300\n'],
    ['the date in the upper of two lines', 'Date,Mill 7,,Lathe 2\n,Brix,pH,Level (L)\n2026-10-05,3.4,9,300\n'],
    ['units in a line of their own', 'Date,Mill 7 Brix,Mill 7 pH,Lathe 2 level\n,°Bx,,L\n2026-10-05,3.4,9,300\n'],
    ['an empty corner', ',Mill 7 Brix,Mill 7 pH,Lathe 2 level (L)\n2026-10-05,3.4,9,300\n'],
    ['the field before the machine', 'Date,Brix Mill 7,pH (Mill 7),Level (L) - Lathe 2\n2026-10-05,3.4,9,300\n'],
    [
      'headings again on every page',
      'Date,Mill 7 Brix,Mill 7 pH,Lathe 2 level (L)\nDate,Mill 7 Brix,Mill 7 pH,Lathe 2 level (L)\n2026-10-05,3.4,9,300\n',
    ],
  ])('%s', async (_, text) => {
    const book = metric()
    await take(csv(text), {}, book)
    expect(bySump(book)).toEqual(['m7 brix', 'm7 ph', 'l2 volume'])
  })

  test("a machine goes by its own name, its machines' names and its id", async () => {
    const book = metric()
    await take(csv('Date,Machine,Brix\n2026-10-05, mill  7 ,3\n2026-10-06,BIG LATHE,3\n2026-10-07,l2,3\n'), {}, book)
    expect(book.entries.map((one) => 'sump' in one && one.sump)).toEqual(['m7', 'l2', 'l2'])
  })

  test('a map can give a name to a sump of the book, leave a column out, and rename another', async () => {
    const book = metric()
    const map: SheetMap = {
      machines: { 'M-07': 'm7' },
      columns: { Strength: { field: 'titration', unit: '%' }, pH: null },
    }
    await take(csv('Date,Machine,Strength,pH\n2026-10-05,M-07,7.2,99\n'), map, book)
    expect(book.entries).toMatchObject([{ sump: 'm7', titration: 7.2 }])
    expect(
      (await refused(csv('Date,Machine,Brix\n2026-10-05,M-07,3\n'), { machines: { 'M-07': 'm9' } }, book)).faults,
    ).toMatchObject([{ pointer: '/machines/M-07' }])
  })

  test('level, pumps, draw-off, skimming, a fill to the mark and a note alone', async () => {
    const book = metric({ waters: [{ id: 'w1', name: 'Ring main', kind: 'tap' }] })
    const text =
      'Date,Machine,Level (L),Pumps,Drawn off (L),Skimmed (L),Added (L),Added %,Water,Notes\n2026-10-05,Mill 7,200,running,5,0.5,full,6,tap,\n2026-10-06,Mill 7,,,,,,,,smells\n'
    await take(csv(text), {}, book)
    const at = { sump: 'm7', at: '2026-10-05T10:00:00.000Z' }
    expect(plainly(book.entries)).toEqual([
      { ...at, kind: 'reading', volume: 200, pumps: 'running' },
      { ...at, kind: 'drawoff', volume: 5 },
      { ...at, kind: 'skim', litres: 0.5 },
      { ...at, kind: 'addition', toMark: true, strength: 6, water: 'w1' },
      { sump: 'm7', at: '2026-10-06T10:00:00.000Z', kind: 'observation', note: 'smells' },
    ])
  })

  test('brix goes with its temperature, every other reading alone', async () => {
    const book = us()
    await take(csv('Date,Machine,Brix,Temp (°F),Chloride (mg/L)\n10/15/2026,Mill 7,3.4,68,40\n'), {}, book)
    expect(plainly(book.entries)).toMatchObject([{ brix: 3.4, temperature: expect.closeTo(20, 10) }, { chloride: 40 }])
  })
})
