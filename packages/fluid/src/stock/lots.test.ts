import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type StockEvent, stockOf } from './lots.ts'

const keeping = { shelfLifeDays: 365, openedDays: null }
const receipt = (on: number, lot: string | null, litres: number, more: Partial<StockEvent> = {}): StockEvent =>
  ({ kind: 'receipt', on, lot, litres, madeOn: null, openedOn: null, seal: null, ...more }) as StockEvent
const use = (on: number, litres: number, lot: string | null = null): StockEvent => ({ kind: 'use', on, lot, litres })
const count = (on: number, litres: number, lot: string | null = null): StockEvent => ({
  kind: 'count',
  on,
  lot,
  litres,
})
const left = (events: StockEvent[]) => stockOf(events, keeping).lots.map(({ lot, litres }) => [lot, litres])

test('a use without a lot is taken from the lot that expires soonest, not from the one that came first', () => {
  const events = [receipt(0, 'A', 200, { madeOn: -10 }), receipt(5, 'B', 200, { madeOn: -90 }), use(6, 250)]
  expect(left(events)).toEqual([['A', 150]])
})

test('of two lots of unknown age the first that came goes first, and those with an age go before both', () => {
  const old = { shelfLifeDays: null, openedDays: null }
  const events = [receipt(0, 'A', 200), receipt(5, 'B', 200), use(6, 50)]
  expect(stockOf(events, old).lots.map(({ litres }) => litres)).toEqual([150, 200])
})

test('a use that names its lot is taken from that lot', () => {
  expect(left([receipt(0, 'A', 200), receipt(5, 'B', 200), use(6, 50, 'b ')])).toEqual([
    ['A', 200],
    ['B', 150],
  ])
})

test('a lot ages from the day it was made; without one from its arrival; an opened drum as it says', () => {
  const stock = stockOf(
    [receipt(100, 'A', 1, { madeOn: 60 }), receipt(100, 'B', 1), receipt(100, 'C', 1, { madeOn: 90, openedOn: 101 })],
    { shelfLifeDays: 365, openedDays: 180 },
  )
  expect(stock.lots.map(({ lot, expiresOn, agedFrom }) => [lot, expiresOn, agedFrom])).toEqual([
    ['C', 281, 'opened'],
    ['A', 425, 'made'],
    ['B', 465, 'arrival'],
  ])
})

test('two deliveries of one lot are one lot, as old as its oldest drum', () => {
  const { lots } = stockOf(
    [receipt(0, 'A', 200, { madeOn: -5 }), receipt(9, 'a', 200, { madeOn: -20, seal: 'broken' })],
    keeping,
  )
  expect(lots).toMatchObject([
    { litres: 400, received: 400, madeOn: -20, expiresOn: 345, receivedOn: 0, seal: 'broken' },
  ])
})

test('more used than there can have been is told, and never below nothing', () => {
  const stock = stockOf([receipt(0, 'A', 100), use(3, 150)], keeping)
  expect(stock).toMatchObject({ litres: 0, missing: 50, belowNothingOn: 3, lots: [] })
})

test('a delivery that is written later than its use makes good what was owed, and the day is still told', () => {
  const stock = stockOf([receipt(0, 'A', 20), use(1, 50), receipt(2, 'B', 200)], keeping)
  expect(stock).toMatchObject({ litres: 170, missing: 0, belowNothingOn: 1 })
})

test('more from one lot than came of it is told and taken from the others', () => {
  const stock = stockOf([receipt(0, 'A', 200), receipt(0, 'B', 200), use(3, 300, 'A')], keeping)
  expect(stock).toMatchObject({ litres: 100, missing: 0, overdrawn: [{ lot: 'A', litres: 100 }] })
  expect(stock.lots.map(({ lot, litres }) => [lot, litres])).toEqual([['B', 100]])
})

test('a lot that never came is told, and its use goes by age', () => {
  const stock = stockOf([receipt(0, 'A', 200), use(3, 50, 'X-9')], keeping)
  expect(stock).toMatchObject({ litres: 150, unknownLots: ['X-9'], overdrawn: [] })
})

test('a count puts right what was written before it; what is missing went over the days since the count before', () => {
  const stock = stockOf([receipt(0, 'A', 400), count(10, 300), use(12, 20), count(20, 250)], keeping)
  expect(stock.litres).toBe(250)
  expect(stock.counts.map(({ found, expected }) => [found, expected])).toEqual([
    [300, 400],
    [250, 280],
  ])
  expect(stock.uses).toEqual([
    { from: 0, to: 10, litres: 100 },
    { from: 12, to: 12, litres: 20 },
    { from: 10, to: 20, litres: 30 },
  ])
})

test('a count that finds more than the book had has it of an unknown lot', () => {
  expect(left([receipt(0, 'A', 100), count(10, 150)])).toEqual([
    ['A', 100],
    [null, 50],
  ])
})

test('a count after records that went below nothing begins anew', () => {
  const stock = stockOf([receipt(0, 'A', 20), use(1, 50), count(2, 200)], keeping)
  expect(stock).toMatchObject({ litres: 200, missing: 0, belowNothingOn: null })
})

test('what was used before the first delivery or count tells how much goes, and is taken from nothing', () => {
  const stock = stockOf([use(1, 50), use(3, 20), receipt(4, 'A', 200), use(5, 30)], keeping)
  expect(stock).toMatchObject({ litres: 170, missing: 0, belowNothingOn: null, firstDay: 1 })
  expect(stock.uses.map(({ litres }) => litres)).toEqual([50, 20, 30])
  expect(stockOf([use(1, 50)], keeping)).toMatchObject({ litres: 0, missing: 0, lots: [] })
})

test('a lot can be counted by itself', () => {
  expect(left([receipt(0, 'A', 200), receipt(0, 'B', 200), count(3, 120, 'A')])).toEqual([
    ['A', 120],
    ['B', 200],
  ])
})

test('nothing at all is no stock', () => {
  expect(stockOf([], keeping)).toMatchObject({ litres: 0, lots: [], firstDay: null })
})

test('whatever happens, what is there is what came less what went, or nothing', () => {
  const lot = fc.constantFrom('A', 'B', 'C', null)
  const litres = fc.integer({ min: 1, max: 400 })
  const event = fc.oneof(
    fc.tuple(lot, litres).map(([name, amount]) => receipt(0, name, amount)),
    fc.tuple(lot, litres).map(([name, amount]) => use(0, amount, name)),
  )
  fc.assert(
    fc.property(fc.array(event, { maxLength: 12 }), (rest) => {
      const events = [receipt(0, 'A', 1), ...rest]
      const net = events.reduce((sum, { kind, litres: amount }) => sum + (kind === 'receipt' ? amount : -amount), 0)
      const stock = stockOf(events, keeping)
      expect(stock.litres - stock.missing).toBeCloseTo(net, 6)
      expect(stock.litres === 0 || stock.missing === 0).toBe(true)
    }),
  )
})
