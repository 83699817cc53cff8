import { expect, test } from 'vitest'
import { bookFile, faultsOf, inMemory, openBook, openSqliteStore, sourceOf } from '../../../packages/book/src/index.ts'
import { dayMs } from './clock.ts'
import { simulateShop } from './shop.ts'

const shop = simulateShop({ seed: 11, shop: 1, sumps: 20 })
const { book, truth, labels, instant } = shop
const ids = book.sumps.map(({ id }) => id)

test('the book of a simulated shop is a strict book file', () => {
  const parsed = bookFile.safeParse(book)
  expect(parsed.success ? [] : faultsOf(parsed.error, book)).toEqual([])
})

test('the book imports whole and without a warning', async () => {
  const store = await openSqliteStore(inMemory)
  try {
    const sumpbook = openBook(store, () => new Date('2027-03-01T00:00:00Z'))
    const report = await sumpbook.importFile(sourceOf('shop.json', Buffer.from(JSON.stringify(book))))
    expect(report).toMatchObject({ warnings: [] })
  } finally {
    await store.close()
  }
})

test('the same seed gives the same shop, another seed another', () => {
  expect(simulateShop({ seed: 11, shop: 1, sumps: 20 }).book).toEqual(book)
  expect(simulateShop({ seed: 12, shop: 1, sumps: 20 }).book).not.toEqual(book)
})

test('truth stays physical: a sump holds fluid, and neither runs over by half nor turns to concentrate', () => {
  for (const id of ids) {
    const mark = book.sumps.find((sump) => sump.id === id)!.capacity! / 1.25
    for (let day = 29; day < 182; day += 7) {
      const { volume, concentration, hardness, evaporation28, carryOff28 } = truth.at(id, instant(day, 12))
      expect(volume).toBeGreaterThan(0.2 * mark)
      expect(volume).toBeLessThan(2.6 * mark)
      expect(concentration).toBeGreaterThan(0.5)
      expect(concentration).toBeLessThan(25)
      expect(hardness).toBeGreaterThan(0)
      expect(evaporation28).toBeGreaterThan(0)
      expect(carryOff28).toBeGreaterThan(0)
    }
  }
})

test('a sump left alone loses exactly what evaporates and what is carried off', () => {
  for (const id of ids) {
    const at = instant(100, 13)
    const course = truth.ahead(id, at, 7)
    const { evaporated, carried } = truth.losses(id, at, at + 7 * dayMs)
    const lost = course[0]!.volume - course[7]!.volume
    // Used-up concentrate is the rest: at most 0.2 % of it a day, so below 0.15 % of the volume in a week at 10 %.
    expect(lost).toBeGreaterThanOrEqual(evaporated + carried - 1e-6)
    expect(lost - evaporated - carried).toBeLessThan(0.005 * course[0]!.volume)
  }
})

test('every label names an entry of the book or an instant inside it', () => {
  const known = new Set(book.entries.map(({ id }) => id))
  const inside = (ms: number) => ms >= instant(0, 0) && ms < instant(182, 0)
  expect(labels.wrongReadings.length).toBeGreaterThan(0)
  expect(labels.missing.length).toBeGreaterThan(0)
  expect(labels.wrongReadings.filter(({ entry, atMs }) => !known.has(entry) || !inside(atMs))).toEqual([])
  expect(labels.missing.filter(({ atMs }) => !inside(atMs))).toEqual([])
})

test('readings come about once or twice a week, strips every two to four weeks', () => {
  const readings = book.entries.filter(({ kind }) => kind === 'reading')
  const perWeek = readings.length / ids.length / 26
  expect(perWeek).toBeGreaterThan(0.7)
  expect(perWeek).toBeLessThan(2)
  const strips = readings.filter(({ hardness }) => hardness !== undefined).length / ids.length
  expect(strips).toBeGreaterThan(4.5)
  expect(strips).toBeLessThan(14)
})
