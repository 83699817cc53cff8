// `node bench/record/damage-backups.ts --times 1000`: damaged backups, each refused, the book there untouched.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { BookError, backUp, restore } from '@sumpbook/book'
import { keepFigures, timesAsked } from './keep-figures.ts'
import { smallBook } from './small-book.ts'

const times = timesAsked(1000)
const folder = mkdtempSync(join(tmpdir(), 'sumpbook-damage-'))
const below = (bound: number) => Math.floor(Math.random() * bound)

/** A bit turned, a run of bytes made anew, an end cut, or blocks taken out; never the backup itself. */
function damaged(bytes: Buffer): Buffer {
  const at = below(bytes.byteLength)
  const copy = Buffer.from(bytes)
  switch (below(4)) {
    case 0:
      copy[at] = copy[at]! ^ (1 << below(8))
      return copy
    case 1:
      copy.fill(below(256), at, Math.min(bytes.byteLength, at + 1 + below(64)))
      return copy.equals(bytes) ? damaged(bytes) : copy
    case 2:
      return copy.subarray(0, at)
    default: {
      const block = 512 * below(bytes.byteLength / 512)
      return Buffer.concat([copy.subarray(0, block), copy.subarray(block + 512 * (1 + below(3)))])
    }
  }
}

try {
  const file = join(folder, 'book.sqlite')
  const book = await smallBook(file)
  const backup = join(folder, 'backup.tar')
  await book.store.snapshot((journal) => backUp(journal, backup))
  await book.close()
  const [bytes, before] = [readFileSync(backup), readFileSync(file)]
  let [refused, touched] = [0, 0]
  const taken: string[] = []
  for (let n = 0; n < times; n++) {
    const bad = join(folder, 'bad.tar')
    writeFileSync(bad, damaged(bytes))
    try {
      await restore(bad, { kind: 'file', file }, { attachments: join(folder, 'attachments'), replace: true })
      taken.push(`${n}`)
    } catch (error) {
      if (error instanceof BookError && error.code === 'damaged-backup') refused += 1
      else taken.push(String(error))
    }
    if (!readFileSync(file).equals(before)) touched += 1
  }
  keepFigures('damaged backups', { times, refused, touched, taken }, refused === times && touched === 0)
} finally {
  rmSync(folder, { recursive: true, force: true })
}
