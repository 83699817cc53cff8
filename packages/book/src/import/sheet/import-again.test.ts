import { describe, expect, test } from 'vitest'
import type { Entry } from '../../schema/entries/index.ts'
import { csv, fixture, metric, take, us } from './testing.ts'

describe('importing again', () => {
  const sheet = (brix: string, note = '') =>
    csv(`Date,Machine,Brix,pH,Notes\n2026-10-05,Mill 7,${brix},9.1,${note}\n2026-10-06,Lathe 2,5.0,,\n`)

  test('the same sheet changes nothing', async () => {
    const book = us()
    await take(fixture('long-us.csv'), { machines: { 'Grinder 1': { fillVolume: null } } }, book)
    const writes = book.writes
    const again = await take(fixture('long-us.csv'), { machines: { 'Grinder 1': { fillVolume: null } } }, book)
    expect(again.counts).toMatchObject({ new: 0, same: 4, corrected: 0, entries: 0, things: 0 })
    expect(again.rows.map(({ fate }) => fate)).toEqual(['same', 'same', 'same', 'blank', 'same'])
    expect(book.writes).toBe(writes)
  })

  test('a corrected cell withdraws what stood and becomes a new entry; nothing else moves', async () => {
    const book = metric()
    await take(sheet('3.4'), {}, book)
    const report = await take(sheet('3.6'), {}, book)
    expect(report.counts).toMatchObject({ corrected: 1, same: 1, entries: 2 })
    const [old] = book.entries
    expect(book.entries.slice(-2)).toMatchObject([
      { kind: 'void', entry: old?.id, sump: 'm7' },
      { kind: 'reading', brix: 3.6, at: old?.at },
    ])
    expect((await take(sheet('3.6'), {}, book)).counts).toMatchObject({ same: 2, entries: 0 })
  })

  test('a cell corrected back is a third revision', async () => {
    const book = metric()
    for (const brix of ['3.4', '3.6', '3.4']) await take(sheet(brix), {}, book)
    expect(book.entries.flatMap((one) => ('brix' in one && one.sump === 'm7' ? [one.brix] : []))).toEqual([
      3.4, 3.6, 3.4,
    ])
    expect(book.entries.filter(({ kind }) => kind === 'void')).toHaveLength(2)
    expect((await take(sheet('3.4'), {}, book)).counts.entries).toBe(0)
  })

  test('an entry that a person withdrew stays withdrawn', async () => {
    const book = metric()
    await take(sheet('3.4'), {}, book)
    const [first] = book.entries
    await book.append([
      {
        id: '6f1b3c1e-0000-4000-8000-000000000001',
        kind: 'void',
        at: '2026-10-07T08:00:00Z',
        entry: first!.id,
        sump: 'm7',
      } as Entry,
    ])
    expect((await take(sheet('3.4'), {}, book)).counts).toMatchObject({ same: 2, entries: 0 })
    // Another value is news again; there is nothing left to withdraw.
    expect((await take(sheet('3.7'), {}, book)).counts).toMatchObject({ corrected: 1, entries: 1 })
  })

  test('a deleted row or cell changes nothing', async () => {
    const book = metric()
    await take(sheet('3.4'), {}, book)
    const report = await take(csv('Date,Machine,Brix,pH,Notes\n2026-10-05,Mill 7,3.4,,\n'), {}, book)
    expect(report.counts).toMatchObject({ same: 1, entries: 0 })
    expect(book.entries).toHaveLength(3)
  })

  test('two equal readings of one instant are two entries', async () => {
    const book = metric()
    const twice = csv('Date,Machine,Brix\n2026-10-05,Mill 7,3.4\n2026-10-05,Mill 7,3.4\n')
    expect((await take(twice, {}, book)).counts.entries).toBe(2)
    expect((await take(twice, {}, book)).counts).toMatchObject({ same: 2, entries: 0 })
  })
})
