import { expect, test } from 'vitest'
import type { BookError } from '../errors.ts'
import { calculations, runCalculation } from './index.ts'

const diagnose = (input: unknown) =>
  runCalculation(calculations.get('diagnose')!, input).output as unknown as {
    causes: { cause: string; probability: number; because: string[]; checks: string[]; remedies: string[] }[]
    nextCheck: { check: string; text: string } | null
    stop: string[]
    notes: string[]
  }

test('signs and readings come to causes with reasons, checks and remedies, and to the next test', () => {
  const { causes, nextCheck, stop } = diagnose({
    readings: { ph: 8.2, concentration: 8 },
    limits: { ph: { low: 8.5 }, concentration: { low: 6, high: 10 } },
    signs: ['rancid smell'],
  })
  const [first] = causes
  expect(first?.cause).toBe('bacterial growth')
  expect(first?.because[0]).toBe('Often seen with it: rancid smell and pH 8.2 (under its limit of 8.5).')
  expect(first?.checks.length).toBeGreaterThan(0)
  expect(first?.remedies.length).toBeGreaterThan(0)
  // Both are known already: nothing more can be told of them.
  expect(['ph', 'concentration']).not.toContain(nextCheck?.check)
  expect(stop[0]).toContain('Dose nothing')
})

test('nothing given is no fault and no finding', () => {
  expect(diagnose({})).toMatchObject({ causes: [], nextCheck: null, stop: [] })
})

test('a level in words stands beside the strength as one in litres does', () => {
  const strength = { readings: { concentration: 8 }, limits: { concentration: { low: 6, target: 8, high: 10 } } }
  const low = diagnose({ ...strength, readings: { ...strength.readings, level: 'low' } })
  expect(low.causes[0]?.cause).toBe('carry-off or a leak')
  expect(diagnose({ ...strength, readings: { ...strength.readings, level: 'right' } }).causes).toEqual([])
})

test('words that the list does not have are named and left aside', () => {
  expect(diagnose({ signs: ['foam', 'sounds odd'] }).notes.join(' ')).toContain('“sounds odd”')
})

test.each([
  ['/readings/brixx', { readings: { brixx: 3 } }],
  ['/readings/ph', { readings: { ph: 15 } }],
  ['/limits/sugar', { limits: { sugar: { high: 1 } } }],
  ['/limits/ph', { limits: { ph: { low: 9, high: 8 } } }],
  ['/signs/0', { signs: [3] }],
  ['/colour', { colour: 'grey' }],
])('%s is refused by its place', (pointer, input) => {
  try {
    diagnose(input)
    expect.unreachable()
  } catch (error) {
    expect((error as BookError).faults.map((fault) => fault.pointer)).toContain(pointer)
  }
})
