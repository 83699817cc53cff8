import { expect, test } from 'vitest'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId, testNow } from '../testing.ts'
import { measurementsOf } from './about.ts'

const analysis = (n: number, at: string, hardness: number, water = 'tap') => ({
  id: testId(n),
  at,
  kind: 'analysis',
  about: { kind: 'water', id: water },
  hardness,
})

test('a water has its analyses, oldest first, without another water’s and without what was withdrawn', async () => {
  const store = await emptyStore()
  const entries = [
    analysis(1, '2026-02-03T09:00:00+01:00', 270),
    analysis(2, '2026-01-03T09:00:00+01:00', 255),
    analysis(3, '2026-02-04T09:00:00+01:00', 2600),
    analysis(4, '2026-02-05T09:00:00+01:00', 5, 'di'),
    { id: testId(5), at: '2026-02-04T10:00:00+01:00', kind: 'void', entry: testId(3), reason: 'a slip' },
  ]
  await importBookFile(store, JSON.stringify(smallShop({ entries })), testNow)
  const found = await measurementsOf(store, { kind: 'water', id: 'tap' })
  expect(found.map((entry) => [entry.at, entry.kind === 'analysis' ? entry.hardness : null])).toEqual([
    ['2026-01-03T08:00:00.000Z', 255],
    ['2026-02-03T08:00:00.000Z', 270],
  ])
  expect(await measurementsOf(store, { kind: 'mixer', id: 'tap' })).toEqual([])
})
