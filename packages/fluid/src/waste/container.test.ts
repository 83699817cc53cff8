import fc from 'fast-check'
import { expect, test } from 'vitest'
import { isBeyond, type WasteEvent, type WasteVessel, wasteNow } from './container.ts'

const drum: WasteVessel = { capacity: 200, term: { count: 90, unit: 'days', from: 'first' } }
const stored = (on: number, litres: number): WasteEvent => ({ kind: 'stored', on, litres })
const pickup = (on: number, litres: number | null, entry = 'p'): WasteEvent => ({ kind: 'pickup', on, litres, entry })
const level = (on: number, litres: number): WasteEvent => ({ kind: 'level', on, litres })
const at = (today: number, events: WasteEvent[], vessel = drum) => wasteNow(events, { vessel, today })

test('the clock starts with the first drop and does not start anew with the next', () => {
  expect(at(30, [stored(0, 20), stored(25, 20)])).toMatchObject({
    litres: 40,
    full: 20,
    clock: { outcome: 'running', startedOn: 0, endsOn: 90, daysLeft: 60 },
  })
})

test('a pickup that empties it ends the clock, and the next drop starts it', () => {
  expect(at(40, [stored(0, 150), pickup(30, 150)]).clock).toEqual({ outcome: 'not-running' })
  expect(at(40, [stored(0, 150), pickup(30, 148), stored(35, 10)]).clock).toMatchObject({ startedOn: 35 })
})

test('a pickup that leaves something leaves its clock running', () => {
  expect(at(40, [stored(0, 150), pickup(30, 100)])).toMatchObject({ litres: 50, clock: { startedOn: 0 } })
})

test('a term from full on runs from the day it was full, and not before', () => {
  const vessel: WasteVessel = { capacity: 200, term: { count: 3, unit: 'days', from: 'full' } }
  expect(at(10, [stored(0, 199)], vessel).clock).toEqual({ outcome: 'not-running' })
  expect(at(10, [stored(0, 199), stored(8, 1), stored(9, 5)], vessel)).toMatchObject({
    clock: { startedOn: 8, endsOn: 11, daysLeft: 1 },
    fullOn: 10,
    over: 5,
  })
})

test('a term that has ended says since when', () => {
  expect(at(100, [stored(0, 20)]).clock).toMatchObject({ daysLeft: -10 })
})

test('without a term, or without a capacity, nothing is made up', () => {
  const now = at(10, [stored(0, 20)], { capacity: null, term: null })
  expect(now).toMatchObject({ litres: 20, full: null, fullOn: null, over: 0, clock: { outcome: 'no-term' } })
})

test('a pickup beyond what was there is taken as it is, empties it, and is told', () => {
  const now = at(10, [stored(0, 100), pickup(5, 180, 'e1')])
  expect(now).toMatchObject({ litres: 0, pickedUp: 180, beyond: [{ on: 5, entry: 'e1', litres: 180, had: 100 }] })
})

test('a few litres more than the book had are the reading of a gauge', () => {
  expect(at(10, [stored(0, 100), pickup(5, 104)]).beyond).toEqual([])
  expect(at(10, [stored(0, 1000), pickup(5, 1030)]).beyond).toEqual([])
  expect(at(10, [stored(0, 1000), pickup(5, 1031)]).beyond).toHaveLength(1)
})

test('a pickup without an amount takes all', () => {
  expect(at(10, [stored(0, 100), pickup(5, null)])).toMatchObject({ litres: 0, pickedUp: 100, beyond: [] })
})

test('a level that was looked at counts from then on, with what the book had beside it', () => {
  const now = at(10, [stored(0, 100), level(5, 140), stored(6, 10)])
  expect(now).toMatchObject({ litres: 150, levels: [{ on: 5, found: 140, expected: 100 }] })
  expect(at(10, [stored(0, 100), level(5, 0)]).clock).toEqual({ outcome: 'not-running' })
})

test('it is full when what comes in a week has filled the rest', () => {
  // 14 L a week for four weeks: 2 a day, 144 L to go
  const events = [0, 7, 14, 21].map((on) => stored(on, 14))
  expect(at(28, events)).toMatchObject({ daily: 2, fullOn: 28 + 72 })
  expect(at(28, [stored(0, 14), level(1, 0)]).fullOn).not.toBeNull()
  expect(at(5, [stored(0, 14)]).fullOn).toBeNull()
})

test('the form asks once where a pickup is more than is there, or than it holds', () => {
  expect(isBeyond(104, { had: 100, capacity: 200 })).toBe(false)
  expect(isBeyond(106, { had: 100, capacity: 200 })).toBe(true)
  expect(isBeyond(201, { had: 200, capacity: 200 })).toBe(true)
  expect(isBeyond(201, { had: 200, capacity: null })).toBe(false)
})

test('what came in is in it, fetched, or found otherwise by somebody who looked', () => {
  const amount = fc.integer({ min: 0, max: 300 })
  const event = fc.oneof(
    amount.map((litres) => stored(0, litres)),
    amount.map((litres) => pickup(0, litres)),
  )
  fc.assert(
    fc.property(fc.array(event, { maxLength: 10 }), (events) => {
      const now = at(0, events)
      expect(now.litres).toBeGreaterThanOrEqual(0)
      expect(now.litres).toBeGreaterThanOrEqual(now.stored - now.pickedUp - 12 * events.length)
    }),
  )
})
