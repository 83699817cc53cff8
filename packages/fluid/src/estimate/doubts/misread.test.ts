import { expect, test } from 'vitest'
import type { Surprising } from '../entries/sights.ts'
import { notThisSumps } from './misread.ts'

const surprising = (read: number, quantity: Surprising['quantity'] = 'brix'): Surprising => ({
  quantity,
  z: 5,
  sd: 0.2,
  sight: {
    read,
    expected: 6,
    variance: 0.02,
    first: 1,
    firstSlope: 1,
    second: -1,
    secondSlope: 0,
    third: -1,
    thirdSlope: 0,
  },
})
const neighbour = (sump: string, expected: number) => ({
  entry: `r ${sump}`,
  sump,
  at: 1,
  read: expected,
  expected,
  sd: 0.2,
})

test('a slipped point, either way, is a likelier misreading than a figure beside it', () => {
  const misread = (read: number) => notThisSumps(surprising(read), 's', []).misread
  expect(misread(60)).toBeGreaterThan(5 * misread(50))
  expect(misread(0.6)).toBeGreaterThan(2 * misread(0.95))
})

test('a mark or two miscounted is a likelier misreading than one and a half', () => {
  const misread = (read: number) => notThisSumps(surprising(read), 's', []).misread
  for (const marks of [1, 2]) expect(misread(6 + marks)).toBeGreaterThan(misread(6 + marks + 0.5))
})

test('any figure may be a misreading', () => {
  expect(notThisSumps(surprising(33), 's', []).misread).toBeGreaterThan(0)
})

test('a figure that a neighbour of the round was expected to show may have been read there', () => {
  const round = [neighbour('s', 6), neighbour('t', 9), neighbour('u', 4)]
  const at9 = notThisSumps(surprising(9), 's', round)
  expect(at9.exchanged).toBeGreaterThan(at9.misread)
  expect(notThisSumps(surprising(7.5), 's', round).exchanged).toBeLessThan(0.01 * at9.exchanged)
})

test('a sump is no neighbour of itself, and alone it has none', () => {
  expect(notThisSumps(surprising(6), 's', [neighbour('s', 6)]).exchanged).toBe(0)
  expect(notThisSumps(surprising(9), 's', []).exchanged).toBe(0)
})

test('titrations and levels are not read at a neighbour’s', () => {
  for (const quantity of ['titration', 'seen'] as const) {
    const { misread, exchanged } = notThisSumps(surprising(9, quantity), 's', [neighbour('t', 9)])
    expect(exchanged).toBe(0)
    expect(misread).toBeGreaterThan(0)
  }
})
