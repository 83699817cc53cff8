import { inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import { expect, test } from 'vitest'
import { buildApp } from '../app.ts'

const now = new Date('2026-03-03T10:00:00.000Z')

async function served() {
  const store = await openSqliteStore(inMemory)
  const book = openBook(store, () => now)
  const app = await buildApp({ book, version: '0.0.0-test' })
  const ask = async (path: string) => {
    const answer = await app.inject(path)
    return { status: answer.statusCode, body: answer.json() }
  }
  const put = (n: number, entry: Record<string, unknown>) =>
    book.put({ id: `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`, at: '2026-03-01T09:00:00Z', ...entry })
  return { ask, put }
}

test('the stock and the waste of a shop are answered, as of now or of another time', async () => {
  const { ask, put } = await served()
  await put(1, { kind: 'setup', about: { kind: 'fluid', id: 'f1' }, changes: { name: 'Semi 1' } })
  await put(2, { kind: 'receipt', about: { kind: 'stock', id: 'f1' }, lot: 'A', litres: 200 })
  await put(3, { kind: 'stored', about: { kind: 'waste', id: 'tank' }, litres: 80 })
  const stock = await ask('/api/v1/stock')
  expect(stock.body.fluids).toMatchObject([{ fluid: 'f1', litres: 200, lots: [{ lot: 'A', litres: 200 }] }])
  expect((await ask('/api/v1/stock?at=2026-02-01T00:00:00Z')).body.fluids).toMatchObject([{ litres: 0 }])
  const waste = await ask('/api/v1/waste?from=2026-03-01&to=2026-03-01')
  expect(waste.body).toMatchObject({ from: '2026-03-01', containers: [{ id: 'tank', litres: 80 }] })
})

test.each(['stock', 'waste'])(
  'a field that /%s does not have, and days in the wrong order, are refused',
  async (path) => {
    const { ask } = await served()
    expect((await ask(`/api/v1/${path}?day=1`)).status).toBe(400)
    expect((await ask(`/api/v1/${path}?from=2026-03-02&to=2026-03-01`)).status).toBe(400)
    expect((await ask(`/api/v1/${path}?from=2026-03-02&to=2026-03-02`)).status).toBe(200)
  },
)
