import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId, testNow, testReading } from '../testing.ts'

async function todayOf(entries: unknown[]) {
  const store = await emptyStore()
  await importBookFile(
    store,
    JSON.stringify(smallShop({ entries: [testReading(1, { brix: 3.5, volume: 162 }), ...entries] })),
    testNow,
  )
  return openBook(store, () => testNow).today()
}
const claim = {
  id: testId(2),
  at: '2026-03-03T09:50:00Z',
  kind: 'signoff',
  sump: 's1',
  claim: 'pour:s1',
  step: 'claimed',
  by: 'anna',
}

test('a pour that somebody has claimed says who, and until when', async () => {
  const { items } = await todayOf([claim])
  expect(items[0]!.claimedBy).toMatchObject({ by: 'anna', until: '2026-03-03T10:20:00.000Z', lost: [] })
  expect((await todayOf([])).items[0]!.claimedBy).toBeNull()
})

test('what was poured since is claimed no more', async () => {
  const poured = { id: testId(3), at: '2026-03-03T09:55:00Z', kind: 'addition', sump: 's1', volume: 5, strength: 0 }
  const { items, calm } = await todayOf([claim, poured])
  expect([...items].map(({ claimedBy }) => claimedBy)).toEqual(items.map(() => null))
  expect(items.length + calm.length).toBe(1)
})

test('while a cleanout is under way its sump says so', async () => {
  const opening = {
    id: testId(4),
    at: '2026-03-03T09:00:00Z',
    kind: 'signoff',
    sump: 's1',
    job: testId(4),
    step: 'opened',
    sheet: 'cleanout',
    values: {
      volume: 200,
      heldBack: 10,
      cleanerPercent: 2,
      hours: 4,
      rinsePercent: 2,
      rinseFraction: 0.4,
      rinses: 1,
      target: 8,
    },
  }
  expect((await todayOf([opening])).items[0]!.job).toBeNull()
  const begun = {
    id: testId(5),
    at: '2026-03-03T09:10:00Z',
    kind: 'signoff',
    sump: 's1',
    job: testId(4),
    step: 'ready',
  }
  const today = await todayOf([opening, begun])
  expect(today.items[0]!.job).toMatchObject({ id: testId(4), title: 'Cleanout of Mill 1', next: 'Skim the tramp oil' })
  expect(today.due.find(({ key }) => key === `job:${testId(4)}`)).toMatchObject({ exempt: true })
})
