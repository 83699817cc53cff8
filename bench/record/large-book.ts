import { existsSync, mkdirSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
import { openBook, openStore } from '@sumpbook/book'

/** How large a book is made. */
export interface LargeBook {
  file: string
  readings: number
  sumps: number
}

const day = 86_400_000
/** The last instant of the book; the days before it are filled evenly. */
export const lastInstant = Date.parse('2026-11-24T15:00:00Z')
/** Entries a durable write. */
const atOnce = 10_000
export const sumpId = (n: number) => `s${n + 1}`
/** The nth entry's id: a UUID of version 8 whose time is the entry's, so that neighbours in time are neighbours in the index. */
export const entryId = (n: number, at: number) => {
  const time = at.toString(16).padStart(12, '0')
  return `${time.slice(0, 8)}-${time.slice(8)}-8000-8000-${n.toString(16).padStart(12, '0')}`
}

/**
 * Makes a book of so many readings through the book's own way in, every entry judged, chained and durable; one that is there
 * with as many is used again. Ten years; every fortieth entry is an addition, a hundred waters' analyses stand among them.
 *
 * @returns seconds it took and entries a second; null where it was there
 */
export async function makeLargeBook({
  file,
  readings,
  sumps,
}: LargeBook): Promise<{ seconds: number; perSecond: number } | null> {
  if (existsSync(file)) {
    const store = await openStore({ kind: 'file', file })
    const { seq } = await store.head()
    await store.close()
    if (seq >= readings) return null
    for (const end of ['', '-wal', '-shm']) rmSync(`${file}${end}`, { force: true })
  }
  mkdirSync(dirname(file), { recursive: true })
  let now = lastInstant - 3650 * day
  const store = await openStore({ kind: 'file', file })
  const book = openBook(store, () => new Date(now))
  await book.loadExample(() => JSON.stringify(shopOf(sumps)))
  const step = (3650 * day) / readings
  const from = performance.now()
  for (let n = 0; n < readings; n += atOnce) {
    const entries = Array.from({ length: Math.min(atOnce, readings - n) }, (_, i) => entryOf(n + i, step, sumps))
    now = Date.parse(entries.at(-1)!.at)
    const refused = (await book.putMany(entries)).find(({ status }) => status !== 'added')
    if (refused !== undefined) throw new Error(`entry ${refused.id} was ${refused.status}`)
    if ((n / atOnce) % 50 === 0) process.stderr.write(`${n + entries.length} entries\n`)
  }
  const seconds = (performance.now() - from) / 1000
  await book.close()
  return { seconds, perSecond: readings / seconds }
}

function shopOf(sumps: number) {
  const limits = { concentration: { low: 6, target: 8, high: 10 } }
  return {
    format: 'sumpbook-book/1',
    shop: { name: 'Bench', timeZone: 'Europe/Berlin', units: 'metric', workDays: [1, 2, 3, 4, 5] },
    fluids: [{ id: 'f1', name: 'Semi 1', class: 'semi-synthetic', brixFactor: 1.6, limits }],
    waters: [{ id: 'tap', name: 'Tap water', kind: 'tap', hardness: 220 }],
    sumps: Array.from({ length: sumps }, (_, n) => ({
      id: sumpId(n),
      name: `Mill ${n + 1}`,
      fluid: 'f1',
      fillVolume: 200,
      capacity: 240,
      order: n,
    })),
  }
}

/** Sumps in turn; strength and level wander a little without chance, so that every run has the same book. */
function entryOf(n: number, step: number, sumps: number) {
  const at = Math.round(lastInstant - 3650 * day + (n + 1) * step)
  const sump = sumpId(n % sumps)
  const turn = Math.floor(n / sumps)
  const common = { id: entryId(n, at), at: new Date(at).toISOString(), by: 'p1' }
  if (n % 50_000 === 49_999)
    return { ...common, kind: 'analysis', about: { kind: 'water', id: 'tap' }, hardness: 210 + (turn % 20) }
  if (n % 40 === 39) return { ...common, kind: 'addition', sump, volume: 10, strength: 6, water: 'tap' }
  return {
    ...common,
    kind: 'reading',
    sump,
    brix: 4.6 + ((n * 7 + turn * 3) % 9) / 10,
    volume: 175 + ((n + turn) % 25),
  }
}
