import { expect, test } from 'vitest'
import type { Entry } from '../api/types.ts'
import { claimNow } from './claim-now.ts'

const key = 'pour:s1'
const now = Date.parse('2026-03-03T08:10:00Z')
const here = { by: 'RK', device: 'web-1' }
const says = (step: 'claimed' | 'released', at: string, by = 'RK') =>
  ({ id: `${by} ${at}`, kind: 'signoff', claim: key, step, at, by, device: 'web-1' }) as unknown as Entry
const others = {
  key,
  entry: 'x',
  by: 'MS',
  device: 'web-2',
  at: '2026-03-03T08:00:00Z',
  until: '2026-03-03T08:30:00Z',
  lost: [],
}

test('what this device has claimed and not sent holds, for half an hour', () => {
  const waiting = [says('claimed', '2026-03-03T08:05:00Z')]
  expect(claimNow(key, null, { waiting, here, now })).toMatchObject({ by: 'RK', until: '2026-03-03T08:35:00.000Z' })
  expect(claimNow(key, null, { waiting, here, now: Date.parse('2026-03-03T08:35:00Z') })).toBe(null)
  expect(claimNow('pour:s2', null, { waiting, here, now })).toBe(null)
})

test('another’s claim that was there first stands, and ours is lost beside it', () => {
  const waiting = [says('claimed', '2026-03-03T08:05:00Z')]
  expect(claimNow(key, others, { waiting, here, now })).toMatchObject({ by: 'MS', lost: [{ by: 'RK' }] })
})

test('one lets go of one’s own claim, never of another’s', () => {
  const waiting = [says('released', '2026-03-03T08:06:00Z')]
  expect(claimNow(key, { ...others, by: 'RK' }, { waiting, here, now })).toBe(null)
  expect(claimNow(key, others, { waiting, here, now })).toMatchObject({ by: 'MS' })
})

test('a claim that has run out is none', () => {
  expect(claimNow(key, { ...others, until: '2026-03-03T08:10:00Z' }, { waiting: [], here, now })).toBe(null)
})
