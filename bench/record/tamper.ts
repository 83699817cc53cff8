// `node bench/record/tamper.ts --times 1000`: changes by hand, one a copy of a small book; `verify` must find each.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openStore, verifyStore } from '@sumpbook/book'
import { tamperings } from '../../packages/book/src/integrity/testing.ts'
import { keepFigures, timesAsked } from './keep-figures.ts'
import { smallBook } from './small-book.ts'

const times = timesAsked(1000)
const folder = mkdtempSync(join(tmpdir(), 'sumpbook-tamper-'))
try {
  const file = join(folder, 'book.sqlite')
  await (await smallBook(file)).close()
  const missed: string[] = []
  let withPlace = 0
  const seed = Math.floor(Math.random() * 2 ** 31)
  await tamperings(file, { times, seed }, async (copy, change) => {
    const store = await openStore({ kind: 'file', file: copy })
    const { sound, faults } = await verifyStore(store)
    await store.close()
    if (sound) missed.push(change)
    if (faults[0]?.seq !== null) withPlace += 1
  })
  keepFigures('tamperings', { times, seed, found: times - missed.length, withPlace, missed }, missed.length === 0)
} finally {
  rmSync(folder, { recursive: true, force: true })
}
