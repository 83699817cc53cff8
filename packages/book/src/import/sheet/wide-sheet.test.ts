import { describe, expect, test } from 'vitest'
import type { Sump } from '../../schema/things/index.ts'
import type { SheetMap } from '../sheet-types.ts'
import { fixture, metric, preview, take } from './testing.ts'

describe('a wide European sheet', () => {
  const sumps: Sump[] = ['Fräse 1', 'Fräse 2', 'Drehbank 3', 'Schleifmaschine'].map((name, i) => ({
    id: `s${i + 1}`,
    name,
    fluid: 'blend-40',
    fillVolume: 200,
  }))

  test.each(['wide-european.csv', 'wide-european-1252.csv'])('%s gives one reading a filled cell', async (name) => {
    const book = metric({ sumps })
    const report = await take(fixture(name), {}, book)
    expect(report).toMatchObject({ shape: 'wide', dates: 'dmy', decimal: ',', faults: [], questions: [] })
    expect(report.counts).toEqual({
      rows: 5,
      new: 4,
      same: 0,
      corrected: 0,
      blank: 1,
      refused: 0,
      entries: 12,
      things: 0,
    })
    expect(book.entries).toHaveLength(12)
    // Noon in Berlin on 19 October is 10:00 UTC.
    expect(
      book.entries
        .filter(({ at }) => at.startsWith('2026-10-19'))
        .map((one) => [one.at, 'sump' in one && one.sump, 'brix' in one && one.brix, one.by]),
    ).toEqual([
      ['2026-10-19T10:00:00.000Z', 's1', 3.15, 'MW'],
      ['2026-10-19T10:00:00.000Z', 's2', 2.7, 'MW'],
      ['2026-10-19T10:00:00.000Z', 's3', 5.2, 'MW'],
    ])
    expect(book.entries[0]?.typed).toEqual({ at: '05.10.2026', brix: '3,4' })
  })

  test('new machines are asked for their marks, and for nothing the fluid says', async () => {
    const { questions, warnings } = await preview(fixture('wide-european.csv'), {}, metric({ sumps: [] }))
    expect(questions.map(({ pointer }) => pointer)).toEqual(
      ['Fräse 1', 'Fräse 2', 'Drehbank 3', 'Schleifmaschine'].map((name) => `/machines/${name}/fillVolume`),
    )
    expect(warnings.join(' ')).toContain('Blend 40 is taken as the fluid')
  })

  test('a mark that is said to be unknown is an answer', async () => {
    const book = metric({ sumps: [] })
    const report = await take(
      fixture('wide-european.csv'),
      { newSumps: { fillVolume: null }, machines: { 'fräse 1': { fillVolume: 180, id: 'f1' } } },
      book,
    )
    expect(report.counts).toMatchObject({ entries: 12, things: 4 })
    expect(book.sumps).toEqual([
      { id: 'f1', name: 'Fräse 1', machines: ['Fräse 1'], fluid: 'blend-40', fillVolume: 180 },
      { id: 'frase-2', name: 'Fräse 2', machines: ['Fräse 2'], fluid: 'blend-40' },
      { id: 'drehbank-3', name: 'Drehbank 3', machines: ['Drehbank 3'], fluid: 'blend-40' },
      { id: 'schleifmaschine', name: 'Schleifmaschine', machines: ['Schleifmaschine'], fluid: 'blend-40' },
    ])
  })

  test('an empty book is asked for the fluid, its factor, target and band as well, once for all machines', async () => {
    const { questions } = await preview(
      fixture('wide-european.csv'),
      { newSumps: { fillVolume: null } },
      metric({ sumps: [], fluids: [] }),
    )
    expect(questions.map(({ pointer }) => pointer)).toEqual([
      '/fluids/0/name',
      '/fluids/0/brixFactor',
      '/newSumps/target',
      '/newSumps/low',
      '/newSumps/high',
    ])
  })

  test('the answers fill an empty book', async () => {
    const book = metric({ sumps: [], fluids: [] })
    const map: SheetMap = {
      fluids: [{ name: 'Blend 40', brixFactor: null }],
      newSumps: { fillVolume: null, target: 8, low: 6, high: null },
    }
    await take(fixture('wide-european.csv'), map, book)
    expect(book.fluids).toEqual([{ id: 'blend-40', name: 'Blend 40' }])
    expect(book.sumps[0]).toEqual({
      id: 'frase-1',
      name: 'Fräse 1',
      machines: ['Fräse 1'],
      fluid: 'blend-40',
      limits: { concentration: { target: 8, low: 6 } },
    })
    expect((await take(fixture('wide-european.csv'), map, book)).counts).toMatchObject({
      same: 4,
      entries: 0,
      things: 0,
    })
  })
})
