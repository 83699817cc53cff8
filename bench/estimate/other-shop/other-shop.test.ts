import { expect, test } from 'vitest'
import { bookFile, faultsOf, inMemory, openBook, openSqliteStore, sourceOf } from '../../../packages/book/src/index.ts'
import type { SimulatedShop } from '../world.ts'
import { betweenPads } from './look.ts'
import { simulateOtherShop } from './other-shop.ts'
import { grossOffset } from './walk.ts'

const day = 86_400_000
const shops = [1, 2, 3, 4].map((shop) => simulateOtherShop({ seed: 31, shop, sumps: 15 }))
const { book, truth, instant } = shops[0]!
const all = shops.flatMap((shop) => shop.book.entries)
const additions = all.filter(({ kind, meter }) => kind === 'addition' && meter === undefined)
const readings = all.filter(({ kind }) => kind === 'reading')

test('the books of the second world are strict book files', () => {
  for (const { book } of shops) {
    const parsed = bookFile.safeParse(book)
    expect(parsed.success ? [] : faultsOf(parsed.error, book)).toEqual([])
  }
})

test('they import whole and without a warning', async () => {
  for (const { book } of shops) {
    const store = await openSqliteStore(inMemory)
    try {
      const sumpbook = openBook(store, () => new Date('2027-03-01T00:00:00Z'))
      const report = await sumpbook.importFile(sourceOf('shop.json', Buffer.from(JSON.stringify(book))))
      expect(report).toMatchObject({ warnings: [] })
    } finally {
      await store.close()
    }
  }
})

test('the same seed and number give the same shop, others another', () => {
  expect(simulateOtherShop({ seed: 31, shop: 1, sumps: 15 }).book).toEqual(book)
  expect(simulateOtherShop({ seed: 32, shop: 1, sumps: 15 }).book).not.toEqual(book)
  expect(shops[1]!.book).not.toEqual(book)
})

test('what is there, less what went, is what is left: a sump nobody touches closes to the millilitre', () => {
  for (const { id } of book.sumps) {
    const at = instant(90, 15)
    const { evaporated, carried } = truth.losses(id, at, at + 7 * day)
    const course = truth.ahead(id, at, 7)
    expect(course[0]!.volume - course[7]!.volume).toBeCloseTo(evaporated + carried, 3)
  }
})

test('from day 10 the truth closes with what was written and what the labels say was left out', () => {
  const closed = shops.flatMap((shop) => shop.book.sumps.flatMap(({ id }) => closing(shop, id)))
  expect(closed.length).toBeGreaterThan(10)
  // Each pour is written to 4 % and about a litre: thirty of them to about 1 %.
  for (const { poured, gone } of closed) expect(Math.abs(poured - gone) / gone).toBeLessThan(0.04)
})

/** Litres by the journal and the labels, and by the truth; nothing where a part of it was never measured. */
function closing({ book, truth, labels, instant }: SimulatedShop, id: string) {
  const [from, to] = [instant(10, 0), instant(182, 0)]
  const own = book.entries.filter((entry) => {
    const destination = typeof entry.to === 'object' ? entry.to.sump : undefined
    return (entry.sump === id || destination === id) && Date.parse(entry.at) >= from
  })
  const moved = own.some(({ kind }) => kind === 'charge' || kind === 'transfer')
  if (moved || own.some(({ kind, volume }) => kind === 'addition' && volume === undefined)) return []
  const sum = (kind: string) => own.filter((entry) => entry.kind === kind).reduce((all, { volume }) => all + volume!, 0)
  const leftOut = labels.missing
    .filter(({ sump, atMs }) => sump === id && atMs >= from)
    .reduce((all, { kind, volume }) => all + (kind === 'unlogged-drawoff' ? -volume : volume), 0)
  const { evaporated, carried } = truth.losses(id, from, to)
  const gone = evaporated + carried + truth.at(id, to).volume - truth.at(id, from).volume
  return [{ poured: sum('addition') - sum('drawoff') + leftOut, gone }]
}

test('truth stays physical', () => {
  for (const { book, truth, instant } of shops) {
    for (const { id, capacity } of book.sumps) {
      for (let on = 30; on <= 182; on += 8) {
        const { volume, concentration, hardness, evaporation28, carryOff28 } = truth.at(id, instant(on, 9))
        expect(volume).toBeGreaterThan(0.2 * capacity!)
        expect(volume).toBeLessThan(2 * capacity!)
        expect(concentration).toBeGreaterThan(1)
        expect(concentration).toBeLessThan(25)
        expect(hardness).toBeGreaterThan(0)
        expect(evaporation28).toBeGreaterThan(0)
        expect(carryOff28).toBeGreaterThan(0)
      }
    }
  }
})

test('an hour that was not simulated is refused', () => {
  expect(() => truth.at('s1', instant(300, 0))).toThrow(RangeError)
  expect(() => truth.at('s99', instant(3, 0))).toThrow(RangeError)
})

test('a wrong reading is an entry of its sump, off by at least half a degree', () => {
  const wrong = shops.flatMap(({ labels, book }) =>
    labels.wrongReadings.map((label) => ({ label, entry: book.entries.find(({ id }) => id === label.entry) })),
  )
  expect(wrong.length).toBeGreaterThan(10)
  for (const { label, entry } of wrong) {
    expect(entry).toMatchObject({ kind: 'reading', sump: label.sump, at: new Date(label.atMs).toISOString() })
    expect(Math.abs(label.error)).toBeGreaterThanOrEqual(0.5)
    expect(entry!.brix! - label.error).toBeGreaterThanOrEqual(0)
  }
  const misread = wrong.filter(({ label }) => label.kind === 'misread').length
  expect(misread / readings.length).toBeGreaterThan(0.008)
  expect(misread / readings.length).toBeLessThan(0.022)
})

test('exchanged figures come in pairs whose errors cancel', () => {
  const exchanged = shops.flatMap(({ labels }) => labels.wrongReadings.filter(({ kind }) => kind === 'wrong-sump'))
  expect(exchanged.length).toBeGreaterThan(0)
  expect(exchanged.length % 2).toBe(0)
  expect(exchanged.reduce((sum, { error }) => sum + error, 0)).toBeCloseTo(0, 9)
})

test('a pour that nobody wrote is in the truth and not in the book', () => {
  let alone = 0
  for (const { book, truth, labels, instant } of shops) {
    for (const { kind, sump, atMs, volume, share } of labels.missing) {
      const moving = book.entries.filter(
        (entry) =>
          ['addition', 'drawoff', 'charge', 'transfer'].includes(entry.kind) &&
          (entry.sump === sump || (typeof entry.to === 'object' && entry.to.sump === sump)),
      )
      expect(moving.filter(({ at }) => Date.parse(at) === atMs)).toEqual([])
      // Where nothing else was poured or drawn off in that hour, the truth has moved by this alone and by what was lost.
      const hour = Math.floor((atMs - instant(0, 0)) / 3_600_000)
      const [from, to] = [instant(0, hour), instant(0, hour + 1)]
      const inThatHour = (ms: number) => ms >= from && ms < to
      const also = labels.missing.filter((other) => other.sump === sump && inThatHour(other.atMs)).length > 1
      if (also || moving.some(({ at }) => inThatHour(Date.parse(at)))) continue
      alone++
      const before = truth.at(sump, from).volume
      const { evaporated, carried } = truth.losses(sump, from, to)
      const moved = truth.at(sump, to).volume - before + evaporated + carried
      expect(moved).toBeCloseTo(kind === 'unlogged-drawoff' ? -volume : volume, 6)
      expect(share).toBeCloseTo(volume / before, 6)
    }
  }
  expect(alone).toBeGreaterThan(20)
})

test('an instrument that is grossly off is off for every reading of its walk', () => {
  const many = [5, 6, 7, 8, 9, 10].map((shop) => simulateOtherShop({ seed: 31, shop, sumps: 6 }))
  const off = many.flatMap(({ labels, book }) => labels.instrumentsOff.map((label) => ({ label, book })))
  expect(off.length).toBeGreaterThan(0)
  for (const { label, book } of off) {
    expect(Math.abs(label.offset)).toBeGreaterThanOrEqual(grossOffset)
    const named = book.entries.filter(({ id }) => label.entries.includes(id))
    expect(named.length).toBe(label.entries.length)
    const walked = book.entries.filter(
      ({ kind, at }) => kind === 'reading' && Date.parse(at) >= label.atMs && Date.parse(at) < label.atMs + 3_600_000,
    )
    expect(walked.map(({ id }) => id).sort()).toEqual([...label.entries].sort())
    for (const { instrument } of named) expect(instrument).toBe(label.instrument)
  }
})

test('it is a shop that logs well: one or two readings a week, strips every two to four, a fill nearly each round', () => {
  const sumps = shops.reduce((sum, { book }) => sum + book.sumps.length, 0)
  expect(readings.length / sumps / 26).toBeGreaterThan(1)
  expect(readings.length / sumps / 26).toBeLessThan(2)
  const strips = readings.filter(({ hardness }) => hardness !== undefined).length / sumps
  expect(strips).toBeGreaterThan(26 / 4.5)
  expect(strips).toBeLessThan(26 / 2 + 1)
  const byMark = shops.flatMap(({ book }) =>
    book.sumps.filter(({ id }) => book.entries.some(({ sump, toMark }) => sump === id && toMark === true)),
  )
  expect(byMark.length / sumps).toBeGreaterThan(0.1)
  expect(byMark.length / sumps).toBeLessThan(0.4)
  expect(additions.length / readings.length).toBeGreaterThan(0.5)
})

test('a strip says between which pads a hardness lies', () => {
  expect(betweenPads(30)).toEqual({ below: 60 })
  expect(betweenPads(60)).toEqual({ low: 60, high: 120 })
  expect(betweenPads(900)).toEqual({ atLeast: 800 })
})
