import { describe, expect, test } from 'vitest'
import writeExcelFile from 'write-excel-file/node'
import { sourceOf } from './sheet-source.ts'
import { metric, preview, take, us } from './testing.ts'

describe('a workbook', () => {
  const cell = (value: string | number) =>
    typeof value === 'number' ? { value, type: Number } : { value, type: String }
  const dated = (value: Date, format: string) => ({ value, type: Date, format })
  const book = async (rows: Parameters<typeof writeExcelFile>[0]) =>
    sourceOf('log.xlsx', await writeExcelFile([{ sheet: 'Brix', data: rows }] as never).toBuffer())

  test('dates, times and numbers are read as the cells hold them', async () => {
    const day = dated(new Date(Date.UTC(2026, 9, 5)), 'dd.mm.yyyy')
    const time = dated(new Date(Date.UTC(1899, 11, 30, 14, 30)), 'hh:mm')
    const source = await book([
      ['Date', 'Time', 'Machine', 'Brix', 'Level (gal)'].map(cell),
      [day, time, cell('Mill 7'), cell(3.4), cell('55')],
      // 46301 days after 30 December 1899 is 6 October 2026.
      [cell(46301), null, cell('Lathe 2'), cell(5.25), null],
    ] as never)
    const into = us()
    await take(source, {}, into)
    expect(into.entries.map((one) => [one.at, one.typed?.at])).toEqual([
      ['2026-10-05T19:30:00.000Z', '2026-10-05 14:30'],
      ['2026-10-05T19:30:00.000Z', '2026-10-05 14:30'],
      ['2026-10-06T17:00:00.000Z', '46301'],
    ])
    expect(into.entries[2]).toMatchObject({ brix: 5.25, sump: 'l2' })
    expect((await take(source, {}, into)).counts.entries).toBe(0)
  })

  test('the name of the sheet can say what the machine columns hold', async () => {
    const into = metric()
    await take(
      await book([
        [cell('Date'), cell('Mill 7')],
        [cell('2026-10-05'), cell(3.4)],
      ] as never),
      {},
      into,
    )
    expect(into.entries).toMatchObject([{ sump: 'm7', brix: 3.4 }])
  })

  test('8 % may be kept as 0.08, which is asked', async () => {
    const source = await book([
      ['Date', 'Machine', 'Added (L)', 'Added strength %'].map(cell),
      ['2026-10-05', 'Mill 7', 60, 0.08].map(cell),
    ] as never)
    expect((await preview(source, {}, metric())).questions).toMatchObject([
      { pointer: '/columns/Added strength %/unit', choices: ['%', 'fraction of 1'] },
    ])
    const into = metric()
    await take(source, { columns: { 'Added strength %': { unit: 'fraction of 1' } } }, into)
    expect(into.entries).toMatchObject([{ volume: 60, strength: 8 }])
  })
})
