import { expect, test } from 'vitest'
import type { SheetColumn } from './columns.ts'
import type { NumberField } from './fields.ts'
import type { Measure } from './measures.ts'
import { pourOf, saysToMark } from './pour.ts'

const measures = (values: Partial<Record<NumberField, number>>) =>
  new Map(
    (Object.entries(values) as [NumberField, number][]).map(([field, value]): [NumberField, Measure] => [
      field,
      { field, value, typed: String(value), column: { heading: field } as SheetColumn },
    ]),
  )

test.each([
  ['mix with its strength', { added: 60, addedStrength: 8 }, { volume: 60, strength: 8 }],
  ['mix alone: its strength is unknown', { added: 60 }, { volume: 60 }],
  // 1.5 L in 20 L together: 100 × 1.5 / 20 = 7.5 %.
  ['concentrate and water', { addedConcentrate: 1.5, addedWater: 18.5 }, { volume: 20, strength: 7.5 }],
  [
    'concentrate, water and their sum',
    { added: 20, addedConcentrate: 1.5, addedWater: 18.5 },
    { volume: 20, strength: 7.5 },
  ],
  // 2 L are 5 % of 40 L.
  ['concentrate and the strength of the mix', { addedConcentrate: 2, addedStrength: 5 }, { volume: 40, strength: 5 }],
  ['water alone', { addedWater: 20 }, { volume: 20, strength: 0 }],
  ['concentrate alone stays concentrate', { addedConcentrate: 2 }, { concentrate: 2 }],
  ['zeros beside an amount count for nothing', { added: 60, addedConcentrate: 0, addedWater: 0 }, { volume: 60 }],
])('%s', (_, values, fields) => {
  expect(pourOf(measures(values), null)).toMatchObject({ outcome: 'pour', fields })
})

test('zero is nothing poured', () => {
  expect(pourOf(measures({ added: 0 }), null)).toEqual({ outcome: 'nothing' })
  expect(pourOf(measures({}), null)).toEqual({ outcome: 'nothing' })
})

test('a strength without an amount is no addition, and is told', () => {
  expect(pourOf(measures({ addedStrength: 8 }), null)).toEqual({ outcome: 'no-amount' })
})

test.each([
  ['a mix that is not its parts', { added: 30, addedConcentrate: 1.5, addedWater: 18.5 }],
  ['a mix and concentrate beside it', { added: 30, addedConcentrate: 1.5 }],
  ['a strength that the parts do not give', { addedConcentrate: 1.5, addedWater: 18.5, addedStrength: 12 }],
  ['concentrate in a mix of 0 %', { addedConcentrate: 1.5, addedStrength: 0 }],
])('%s is a fault', (_, values) => {
  expect(pourOf(measures(values), null).outcome).toBe('fault')
})

test('filled to the mark has no amount, but may have a strength', () => {
  expect(saysToMark('Full')).toBe(true)
  expect(saysToMark('60')).toBe(false)
  expect(pourOf(measures({ addedStrength: 6 }), 'full')).toMatchObject({
    outcome: 'pour',
    fields: { toMark: true, strength: 6 },
    typed: { toMark: 'full' },
  })
  expect(pourOf(measures({ addedWater: 6 }), 'full').outcome).toBe('fault')
})
