import { expect, test } from 'vitest'
import { holds, lostHere } from './whose-claim.ts'

const claim = { key: 'k', entry: 'e', by: 'Anna', device: 'x', at: '', until: '', lost: [] }

test('a claim is its person’s, from whatever device', () => {
  expect(holds({ ...claim, person: 'p1' } as never, { by: 'p1', device: 'y' })).toBe(true)
  expect(holds(claim, { by: 'Anna', device: 'y' })).toBe(true)
  expect(holds(claim, { by: 'Ben', device: 'x' })).toBe(false)
})

test('without a person it is the device’s', () => {
  expect(holds({ by: null, device: 'x' }, { device: 'x' })).toBe(true)
  expect(holds({ by: null, device: 'x' }, { device: 'y' })).toBe(false)
  expect(holds({ by: null, device: null }, {})).toBe(false)
})

test('who came later is told', () => {
  const lost = [{ entry: 'f', by: 'Ben', device: 'y', at: '' }]
  expect(lostHere({ ...claim, lost }, { by: 'Ben' })).toBe(true)
  expect(lostHere({ ...claim, lost }, { by: 'Anna' })).toBe(false)
})
