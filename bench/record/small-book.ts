import { type Book, openBook, openStore } from '@sumpbook/book'

const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const at = '2026-03-03T09:00:00Z'

/** A book of one sump with every kind of row in it. */
export async function smallBook(file: string): Promise<Book> {
  let now = Date.parse('2026-03-03T10:00:00Z')
  const book = openBook(await openStore({ kind: 'file', file }), () => {
    now += 1001
    return new Date(now)
  })
  await book.loadExample(() =>
    JSON.stringify({
      format: 'sumpbook-book/1',
      shop: { name: 'Bench', timeZone: 'Europe/Berlin', units: 'metric' },
      fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6 }],
      sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200 }],
      'of ours': { kept: true },
    }),
  )
  for (let n = 1; n <= 20; n++)
    await book.put({ id: id(n), at, kind: 'reading', sump: 's1', brix: n, note: `Säge ${n}` })
  await book.put({ id: id(31), at, kind: 'setup', about: { kind: 'sump', id: 's1' }, changes: { fillVolume: 210 } })
  await book.put({ id: id(32), at, kind: 'void', entry: id(2), reason: 'wrong machine', sump: 's1' })
  await book.put({ id: id(33), at, kind: 'reading', sump: 'not-known', brix: 3 })
  return book
}
