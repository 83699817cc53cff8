import { expect, test } from 'vitest'
import { drainWay } from './drain-way.ts'
import { shutdownSheet } from './shutdown.ts'

const wayOf = (volume: number, solids: 'little' | 'much' | null = null) => drainWay({ volume, heldBack: 0, solids }).way

test('a small sump by hand, most with a pump, a large one by truck', () => {
  expect([wayOf(60), wayOf(60.1), wayOf(1499), wayOf(1500)]).toEqual(['drum-and-hand', 'pump', 'pump', 'vacuum-truck'])
})

test('much sludge calls the truck earlier', () => {
  expect([wayOf(749, 'much'), wayOf(750, 'much'), wayOf(750, 'little')]).toEqual(['pump', 'vacuum-truck', 'pump'])
})

test('under 30 % of the level bailing gets hard, and never less than what stays anyway', () => {
  expect(drainWay({ volume: 200, heldBack: 10, solids: null }).hard).toBe(60)
  expect(drainWay({ volume: 200, heldBack: 80, solids: null }).hard).toBe(80)
  expect(() => drainWay({ volume: 200, heldBack: 201, solids: null })).toThrow('heldBack is 201')
})

test('before anything moves after a standstill somebody smells, from a step away', () => {
  const [first] = shutdownSheet('restart')
  expect(first).toMatchObject({ id: 'smell', cautions: expect.arrayContaining(['rottenEggGas', 'acidOrBleach']) })
})

test.each(['weekend', 'holidays', 'mothballed', 'restart'] as const)(
  'the steps of %s have names of their own',
  (kind) => {
    const ids = shutdownSheet(kind).map(({ id }) => id)
    expect(ids.length).toBeGreaterThan(3)
    expect(new Set(ids).size).toBe(ids.length)
  },
)
