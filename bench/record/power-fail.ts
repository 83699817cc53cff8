// `node bench/record/power-fail.ts --times 1000`: power cuts at any moment of recorded writes; Linux with `strace` only.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { checkBook } from './check-book.ts'
import { keepFigures, timesAsked } from './keep-figures.ts'
import { nothingSent } from './load.ts'
import { imageAfter } from './power-fail-images.ts'
import { type FileEvent, recordWrites } from './recorded-writes.ts'

const entries = 300
const times = timesAsked(1000)
const folder = mkdtempSync(join(tmpdir(), 'sumpbook-power-'))

interface Figures {
  events: number
  syncs: number
  images: number
  /** Images in which something acknowledged was missing. */
  imagesWithLoss: number
  /** Images that did not open, or were not sound. */
  imagesUnsound: number
  entriesLost: number
}

async function cutRun(events: readonly FileEvent[]): Promise<Figures> {
  const figures: Figures = {
    events: events.length,
    syncs: events.filter(({ what }) => what === 'sync').length,
    images: 0,
    imagesWithLoss: 0,
    imagesUnsound: 0,
    entriesLost: 0,
  }
  const first = events.findIndex(({ what }) => what === 'ack')
  for (let n = 0; n < times; n++) {
    const cut = first + Math.floor(Math.random() * (events.length - first))
    const { files, acknowledged } = imageAfter(events, cut, Math.random)
    const place = join(folder, `image-${n}`)
    const file = `${place}.sqlite`
    for (const [name, bytes] of files) writeFileSync(name.replace('book.sqlite', file), bytes)
    figures.images += 1
    try {
      const fate = await checkBook({ kind: 'file', file }, nothingSent())
      if (fate.faults.length > 0) figures.imagesUnsound += 1
      if (fate.entries < acknowledged) figures.imagesWithLoss += 1
      figures.entriesLost += Math.max(0, acknowledged - fate.entries)
    } catch {
      figures.imagesUnsound += 1
    }
    for (const ending of ['', '-wal', '-shm', '-journal']) rmSync(file + ending, { force: true })
  }
  return figures
}

async function recorded(synchronous: string): Promise<Figures> {
  const inside = mkdtempSync(join(folder, `${synchronous}-`))
  return cutRun(recordWrites(inside, { entries, synchronous }))
}

try {
  const full = await recorded('full')
  const normal = await recorded('normal')
  const good =
    full.imagesWithLoss === 0 && full.imagesUnsound === 0 && normal.imagesUnsound === 0 && normal.imagesWithLoss > 0
  keepFigures('power cuts of the SQLite file', { entries, full, 'normal, the control': normal }, good)
} finally {
  rmSync(folder, { recursive: true, force: true })
}
