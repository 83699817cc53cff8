import { expect, test } from 'vitest'
import { type PhQuestion, phVerdict } from './ph-verdict.ts'

const at = (value: number) => ({ low: value, high: value })
const strips = (low: number, high: number) => ({ low, high })
const asked = (more: Partial<PhQuestion>): PhQuestion => ({
  now: at(9),
  fresh: at(9.2),
  strength: null,
  act: 0.5,
  change: 1,
  floor: 8.5,
  ...more,
})

test.each<[string, Partial<PhQuestion>, string]>([
  ['a fall of 0.5 is not more than 0.5', { now: at(8.7) }, 'in-order'],
  ['a fall of 0.6', { now: at(8.6) }, 'act'],
  ['a fall of 1.0 is not more than 1.0', { fresh: at(9.6), now: at(8.6) }, 'act'],
  ['a fall of 1.1', { fresh: at(9.7), now: at(8.6) }, 'change'],
  ['on the floor', { fresh: at(9), now: at(8.5) }, 'in-order'],
  ['under the floor', { fresh: at(8.9), now: at(8.4) }, 'below-floor'],
  ['under the floor without a fresh value', { fresh: null, now: at(8.4) }, 'below-floor'],
  ['a rise', { now: at(9.4) }, 'in-order'],
  ['no rule at all', { act: null, change: null, floor: null, now: at(7), fresh: null }, 'in-order'],
])('%s: %s', (_, more, outcome) => {
  expect(phVerdict(asked(more)).outcome).toBe(outcome)
})

test('without a fresh value a fall cannot be told', () => {
  expect(phVerdict(asked({ fresh: null }))).toEqual({ outcome: 'cannot-tell', because: 'no-fresh', fall: null })
})

// Read 9.5 to 10 fresh and 9 to 9.5 now: the fall is anything from 0 to 1.
test('half-unit strips cannot see a fall of 0.5', () => {
  const verdict = phVerdict(asked({ fresh: strips(9.5, 10), now: strips(9, 9.5), floor: null }))
  expect(verdict).toEqual({ outcome: 'cannot-tell', because: 'steps-too-wide', fall: 0.5 })
})

test('half-unit strips still see a fall that is large enough', () => {
  expect(phVerdict(asked({ fresh: strips(9.5, 10), now: strips(8, 8.5), floor: null })).outcome).toBe('act')
  expect(phVerdict(asked({ fresh: strips(9.5, 10), now: strips(7.5, 8), floor: null })).outcome).toBe('change')
})

test('strips whose steps hold the floor cannot tell', () => {
  const verdict = phVerdict(asked({ fresh: at(8.8), now: strips(8.4, 8.6), act: null, change: null }))
  expect(verdict).toMatchObject({ outcome: 'cannot-tell', because: 'steps-too-wide' })
})

test('a fall that may come from another strength is not laid to the fluid', () => {
  const weaker = { now: at(8.6), strength: { fresh: 8, now: 5.9 } }
  expect(phVerdict(asked(weaker))).toMatchObject({ outcome: 'cannot-tell', because: 'other-strength' })
  expect(phVerdict(asked({ ...weaker, strength: { fresh: 8, now: 6 } })).outcome).toBe('act')
  expect(phVerdict(asked({ ...weaker, now: at(9) })).outcome).toBe('in-order')
  expect(phVerdict(asked({ ...weaker, now: at(8.4) })).outcome).toBe('below-floor')
})

test.each<[string, Partial<PhQuestion>]>([
  ['now is 15', { now: at(15) }],
  ['fresh is NaN', { fresh: at(Number.NaN) }],
  ['act is 0', { act: 0 }],
  ['change is -1', { change: -1 }],
])('%s is refused', (message, more) => {
  expect(() => phVerdict(asked(more))).toThrow(message)
})
