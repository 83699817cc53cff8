import { expect, test } from 'vitest'
import { type DueHere, type DueTest, dueHere } from './due-here.ts'
import type { Step } from './use-steps.ts'

const nitrite: DueTest = { test: 'nitrite', name: 'Nitrite' }
const ph: DueTest = { test: 'ph', name: 'pH' }

/** What is shown after one thing after the other: where somebody is, and what the calendar says is due. */
const after = (...happened: [Step, DueTest[]][]) =>
  happened.reduce<DueHere | null>((before, [step, found]) => dueHere(before, step, found, false), null)!

test('what the calendar brings before the refractometer stands above it', () => {
  expect(after(['level', []], ['level', [nitrite]], ['signs', [nitrite]])).toMatchObject({
    due: [nitrite],
    isBelow: false,
  })
})

test('what is found due once somebody is at the refractometer comes below it, and stays there', () => {
  const late = after(['signs', []], ['brix', []], ['brix', [nitrite]])
  expect(late).toMatchObject({ due: [nitrite], isBelow: true })
  expect(dueHere(late, 'tests', [nitrite], true)).toMatchObject({ isBelow: true })
})

test('a row that is there anyway is not moved by what is found due', () => {
  const before = after(['brix', []])
  expect(dueHere(before, 'brix', [nitrite], true).isBelow).toBe(false)
})

test('fields that somebody fills in stay, whatever another phone has written meanwhile', () => {
  expect(after(['tests', [nitrite]], ['tests', []]).due).toEqual([nitrite])
  expect(after(['tests', [nitrite]], ['tests', [ph, nitrite]]).due).toEqual([nitrite])
})

test('a row at the refractometer does not go away under a thumb', () => {
  expect(after(['tests', [nitrite]], ['brix', [nitrite]], ['brix', []]).due).toEqual([nitrite])
})

test('the next step shows what is due by then', () => {
  expect(after(['tests', [nitrite]], ['tests', []], ['brix', []]).due).toEqual([])
})
