import { expect, test } from 'vitest'
import { rinseVerdict, slideVerdict } from './acceptance.ts'

const good = { freshPh: 9, rinsePh: 9.2, look: 'clear', smell: 'none' } as const

test('a rinse whose pH stays, clear and without smell lets the charge in', () => {
  expect(rinseVerdict(good)).toEqual({ outcome: 'charge' })
  expect(rinseVerdict({ ...good, rinsePh: 9.5 })).toEqual({ outcome: 'charge' })
  expect(rinseVerdict({ ...good, rinsePh: 8.2 })).toEqual({ outcome: 'charge' })
})

test('a pH more than half a unit above, dirt or smell ask for another rinse', () => {
  expect(rinseVerdict({ ...good, rinsePh: 9.6 })).toEqual({ outcome: 'rinse-again', because: ['cleaner-left'] })
  expect(rinseVerdict({ ...good, look: 'dirty', smell: 'smells' })).toEqual({
    outcome: 'rinse-again',
    because: ['still-dirty', 'still-smells'],
  })
})

test('what nobody looked at is no acceptance', () => {
  expect(rinseVerdict({ ...good, freshPh: null, smell: null })).toEqual({
    outcome: 'look-first',
    missing: ['ph', 'smell'],
  })
})

test('a later slide is judged by the shop’s limit, a class that holds it says nothing', () => {
  expect(slideVerdict({ low: null, high: 1e4, limit: 1e4 })).toBe('accepted')
  expect(slideVerdict({ low: 1e3, high: 1e5, limit: 1e4 })).toBe('unclear')
  expect(slideVerdict({ low: 1e4, high: null, limit: 1e4 })).toBe('not-accepted')
  expect(slideVerdict({ low: 1e3, high: null, limit: 1e4 })).toBe('unclear')
})

test('figures that cannot be are refused', () => {
  expect(() => rinseVerdict({ ...good, rinsePh: 15 })).toThrow('rinsePh is 15')
  expect(() => slideVerdict({ low: 10, high: 5, limit: 1e4 })).toThrow('high is 5')
  expect(() => slideVerdict({ low: null, high: 5, limit: 0 })).toThrow('limit is 0')
})
