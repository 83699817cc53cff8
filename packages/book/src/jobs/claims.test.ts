import { expect, test } from 'vitest'
import type { EntryOf } from '../schema/entries/index.ts'
import { testId } from '../testing.ts'
import { foldClaims } from './claims.ts'

type Signoff = EntryOf<'signoff'>
const claim = (n: number, time: string, by: string | null, more: Partial<Signoff> = {}): Signoff => ({
  id: testId(n),
  at: `2026-03-03T${time}Z`,
  kind: 'signoff',
  claim: 'pour:s1',
  step: 'claimed',
  ...(by === null ? {} : { by }),
  ...more,
})
const at = (time: string) => `2026-03-03T${time}.000Z`
const holderOf = (entries: readonly Signoff[], time: string, ends: { key: string; at: string }[] = []) =>
  foldClaims(entries, { at: at(time), ends }).get('pour:s1') ?? null

test('the first claim in time holds, and who came later is kept beside it', () => {
  const held = holderOf([claim(2, '10:05:00', 'b'), claim(1, '10:00:00', 'a')], '10:10:00')
  expect(held).toMatchObject({ by: 'a', lost: [{ by: 'b', entry: testId(2), at: at('10:05:00') }] })
})

test('a claim from a phone that was out of reach counts from when it was made, in whatever order they arrive', () => {
  const entries = [claim(1, '10:05:00', 'b'), claim(2, '10:00:00', 'a')]
  expect(holderOf(entries, '10:10:00')).toMatchObject({ by: 'a', lost: [{ by: 'b' }] })
  expect(holderOf(entries.toReversed(), '10:10:00')).toEqual(holderOf(entries, '10:10:00'))
})

test('at one instant the lower id is first', () => {
  expect(holderOf([claim(2, '10:00:00', 'b'), claim(1, '10:00:00', 'a')], '10:10:00')).toMatchObject({ by: 'a' })
})

test('a claim ends by itself after half an hour, or when it says so', () => {
  expect(holderOf([claim(1, '10:00:00', 'a')], '10:29:59')).not.toBeNull()
  expect(holderOf([claim(1, '10:00:00', 'a')], '10:30:00')).toBeNull()
  const long = [claim(1, '10:00:00', 'a', { until: '2026-03-03T12:00:00Z' })]
  expect(holderOf(long, '11:59:59')).not.toBeNull()
  expect(holderOf(long, '12:00:00')).toBeNull()
})

test('none lasts longer than twelve hours', () => {
  const long = [claim(1, '06:00:00', 'a', { until: '2026-03-05T06:00:00Z' })]
  expect(holderOf(long, '17:59:59')).not.toBeNull()
  expect(holderOf(long, '18:00:00')).toBeNull()
})

test('the same person again lengthens it, from another device too', () => {
  const again = [claim(1, '10:00:00', 'a', { device: 'x' }), claim(2, '10:20:00', 'a', { device: 'y' })]
  expect(holderOf(again, '10:45:00')).toMatchObject({ entry: testId(1), lost: [] })
  expect(holderOf(again, '10:50:00')).toBeNull()
})

test('where nobody signs in the device is the writer', () => {
  const [a, b] = [claim(1, '10:00:00', null, { device: 'x' }), claim(2, '10:01:00', null, { device: 'y' })]
  expect(holderOf([a, b], '10:10:00')).toMatchObject({ device: 'x', lost: [{ device: 'y' }] })
})

test('who holds it lets go of it, nobody else does', () => {
  const held = claim(1, '10:00:00', 'a')
  expect(holderOf([held, claim(2, '10:05:00', 'b', { step: 'released' })], '10:10:00')).toMatchObject({ by: 'a' })
  const released = [held, claim(2, '10:05:00', 'a', { step: 'released' }), claim(3, '10:06:00', 'b')]
  expect(holderOf(released, '10:10:00')).toMatchObject({ by: 'b', lost: [] })
})

test('what was claimed and is done is free again; what was done before is not its end', () => {
  const held = [claim(1, '10:00:00', 'a')]
  expect(holderOf(held, '10:10:00', [{ key: 'pour:s1', at: at('10:05:00') }])).toBeNull()
  expect(holderOf(held, '10:10:00', [{ key: 'pour:s1', at: at('09:59:00') }])).not.toBeNull()
  expect(holderOf(held, '10:10:00', [{ key: 'pour:s2', at: at('10:05:00') }])).not.toBeNull()
})

test('after the time asked for nothing counts', () => {
  expect(holderOf([claim(1, '10:00:00', 'a')], '09:59:00')).toBeNull()
})
