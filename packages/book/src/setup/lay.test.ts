import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId, testNow } from '../testing.ts'
import { lay, settled } from './lay.ts'

test('a field takes the value of its change, costs only the figures that are named', () => {
  const fields = { name: 'a', costs: { labourPerHour: 40, machinePerHour: 60 }, limits: { low: 1, high: 2 } }
  lay(fields, { name: 'b', costs: { labourPerHour: 45 }, limits: { low: 3 } })
  expect(fields).toEqual({ name: 'b', costs: { labourPerHour: 45, machinePerHour: 60 }, limits: { low: 3 } })
})

test('null takes a figure away, or all of them', () => {
  const fields = { costs: { labourPerHour: 40, machinePerHour: 60 } }
  lay(fields, { costs: { labourPerHour: null } })
  expect(settled(fields)).toEqual({ costs: { machinePerHour: 60 } })
  lay(fields, { costs: null })
  expect(settled(fields)).toEqual({})
})

const costsFrom = (n: number, from: string, costs: Record<string, unknown>) => ({
  id: testId(n),
  at: '2026-03-01T09:00:00Z',
  kind: 'setup',
  about: { kind: 'shop' },
  changes: { costs },
  from,
})

test('each figure of the costs has its own history, and a first figure counts for what was before', async () => {
  const store = await emptyStore()
  const entries = [
    costsFrom(1, '2026-01-01', { labourPerHour: 40 }),
    costsFrom(2, '2026-02-01', { labourPerHour: 45 }),
    costsFrom(3, '2026-01-10', { wastePerLitre: 0.3 }),
  ]
  await importBookFile(store, JSON.stringify(smallShop({ entries })), testNow)
  const things = await openBook(store, () => testNow).things()
  const at = (day: string) => things.at(`${day}T12:00:00.000Z`).shop.costs
  expect(at('2025-12-31')).toEqual({ labourPerHour: 40, wastePerLitre: 0.3 })
  expect(at('2026-01-31')).toEqual({ labourPerHour: 40, wastePerLitre: 0.3 })
  expect(at('2026-02-02')).toEqual({ labourPerHour: 45, wastePerLitre: 0.3 })
})

test('a cost below 0 is refused at its field', async () => {
  const store = await emptyStore()
  await importBookFile(store, JSON.stringify(smallShop()), testNow)
  const book = openBook(store, () => testNow)
  const [arrival] = await book.putMany([costsFrom(1, '2026-01-01', { labourPerHour: -1 })])
  expect(arrival).toMatchObject({
    status: 'refused',
    faults: [{ pointer: '/changes/costs/labourPerHour', found: '-1', expected: 'at least 0' }],
  })
  expect((await book.putMany([costsFrom(2, '2026-01-01', { labourPerHour: null })]))[0]).toMatchObject({
    status: 'added',
  })
})
