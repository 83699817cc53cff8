import { describe, expect, test } from 'vitest'
import type { SheetMap } from '../sheet-types.ts'
import { fixture, plainly, preview, take, us } from './testing.ts'

describe('a long US sheet with readings and additions in one row', () => {
  const map: SheetMap = { machines: { 'Grinder 1': { fillVolume: null, capacity: 6000 } } }

  test('each row gives its readings and its addition at one instant', async () => {
    const book = us()
    const report = await take(fixture('long-us.csv'), map, book)
    expect(report).toMatchObject({ shape: 'long', dates: 'mdy', decimal: '.', faults: [], questions: [] })
    // 10/5/2026, 7:10 in Chicago is 12:10 UTC. 55 US gal × 3.785411784 L = 208.1976 L, 10 US gal = 37.8541 L,
    // 22 grains × 17.11806 ppm = 376.597 ppm.
    const first = { sump: 'm7', at: '2026-10-05T12:10:00.000Z', by: 'R. Doe', note: 'skimmed first, then topped up' }
    expect(plainly(book.entries).slice(0, 5)).toEqual([
      { ...first, kind: 'reading', brix: 3.4 },
      { ...first, kind: 'reading', volume: expect.closeTo(208.19765, 4) },
      { ...first, kind: 'reading', ph: 9.1 },
      { ...first, kind: 'reading', hardness: expect.closeTo(376.597, 2) },
      { ...first, kind: 'addition', volume: expect.closeTo(37.85412, 4), strength: 8 },
    ])
    expect(book.entries[4]?.typed).toEqual({ at: '10/5/2026 7:10 AM', volume: '10 gal', strength: '8 %' })
  })

  test('concentrate and water become volume and strength, classes stay classes, machines match in any case', async () => {
    const book = us()
    await take(fixture('long-us.csv'), map, book)
    // 1.5 gal of concentrate in 20 gal: 7.5 %; 20 US gal = 75.70824 L.
    const addition = book.entries.filter(({ kind }) => kind === 'addition')[1]
    expect(addition).toMatchObject({
      sump: 'm7',
      at: '2026-10-19T19:30:00.000Z',
      volume: expect.closeTo(75.70824, 4),
      strength: expect.closeTo(7.5, 10),
    })
    expect(addition?.typed).toMatchObject({ concentrate: '1.5 gal', addedWater: '18.5 gal' })
    // 25 grains are 427.95 ppm, 50 grains 855.90.
    expect(book.entries.flatMap((one) => ('hardness' in one ? [one.hardness] : []))).toEqual([
      expect.closeTo(376.597, 2),
      { below: expect.closeTo(427.9515, 3) },
      expect.closeTo(410.833, 2),
      { low: expect.closeTo(427.9515, 3), high: expect.closeTo(855.903, 3) },
    ])
    expect(book.entries.at(-1)).toMatchObject({
      kind: 'addition',
      sump: 'grinder-1',
      strength: 0,
      volume: expect.closeTo(18.92706, 4),
    })
  })

  test('a heading that is not understood is told, never dropped in silence', async () => {
    const report = await preview(fixture('long-us.csv'), map, us())
    expect(report.columns?.at(-1)).toEqual({ heading: 'Shift', field: null, unit: null, sump: null, sumpName: null })
    expect(report.warnings).toContain('"Shift" is not understood; it is left out.')
  })
})
