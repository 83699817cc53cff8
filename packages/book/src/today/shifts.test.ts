import { expect, test } from 'vitest'
import { shopClock } from '../estimate/shop-clock.ts'
import { thingHistory } from '../setup/things.ts'
import { shiftsAt } from './shifts.ts'

const zone = 'Europe/Berlin'
const thingsOf = (shop: Record<string, unknown>) =>
  thingHistory([{ kind: 'shop', id: 'shop', body: { timeZone: zone, ...shop } }], []).at()
const at = (instant: string, shop: Record<string, unknown> = {}, back = 2) => {
  const { began, endsAt } = shiftsAt(Date.parse(instant), { clock: shopClock(zone), things: thingsOf(shop), back })
  const text = (ms: number) => new Date(ms).toISOString().slice(0, 16)
  return { began: began.map(text), endsAt: text(endsAt) }
}

// 3 March 2026 is a Tuesday; Berlin is an hour ahead of UTC then.
test('without a word of the shop a shift begins at six on a working day and lasts until the next', () => {
  expect(at('2026-03-03T10:00:00Z')).toEqual({
    began: ['2026-03-03T05:00', '2026-03-02T05:00', '2026-02-27T05:00'],
    endsAt: '2026-03-04T05:00',
  })
})

test('a shift begins with its minute, not before', () => {
  expect(at('2026-03-03T05:00:00Z').began[0]).toBe('2026-03-03T05:00')
  expect(at('2026-03-03T04:59:59Z').began[0]).toBe('2026-03-02T05:00')
})

test('a weekend belongs to the shift before it', () => {
  expect(at('2026-03-08T12:00:00Z')).toMatchObject({
    began: ['2026-03-06T05:00', '2026-03-05T05:00', '2026-03-04T05:00'],
    endsAt: '2026-03-09T05:00',
  })
})

test('three shifts a day follow each other, days shut are left out, and the clock of the shop counts in summer too', () => {
  const shifts = ['14:00', '06:00', '22:00']
  expect(at('2026-07-14T13:00:00Z', { shifts })).toMatchObject({
    began: ['2026-07-14T12:00', '2026-07-14T04:00', '2026-07-13T20:00'],
    endsAt: '2026-07-14T20:00',
  })
  const shutdowns = [{ from: '2026-07-06', to: '2026-07-10' }]
  expect(at('2026-07-13T08:00:00Z', { shutdowns }).began).toEqual([
    '2026-07-13T04:00',
    '2026-07-03T04:00',
    '2026-07-02T04:00',
  ])
})

test('a shop without a working day has a shift on every day', () => {
  expect(at('2026-03-08T12:00:00Z', { workDays: [] }).began[0]).toBe('2026-03-08T05:00')
})
