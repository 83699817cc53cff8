import { expect, test } from 'vitest'
import { readPumps } from './pumps.ts'

test.each([
  ['running', 'running'],
  ['On', 'running'],
  ['läuft', 'running'],
  ['in Betrieb', 'running'],
  ['stopped', 'stopped'],
  ['aus', 'stopped'],
  ['parada', 'stopped'],
  ['maybe', null],
])('pumps "%s" are %s', (text, expected) => {
  expect(readPumps(text)).toBe(expected)
})
