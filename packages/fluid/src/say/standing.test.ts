import { expect, test } from 'vitest'
import { sayAbout, sayCrossing, sayDrift, sayHardness, sayNextCheck, sayStanding } from './standing.ts'

const metric = { units: 'metric' } as const
const figure = (mean: number, low90: number, high90: number) => ({ mean, low90, high90 })
// 25 November 2026 is a Wednesday (ISO week 48 of 2026).
const seen = { timeZone: 'Europe/Berlin', now: '2026-11-25T09:00:00Z' }
const crossing = (more: Record<string, unknown> = {}) => ({
  limit: 'concentration.high' as const,
  probability: 0.9,
  earliest: '2026-11-27T09:00:00Z',
  likely: '2026-11-30T09:00:00Z',
  ...more,
})

test('where a sump stands is said with its interval, its volume as about what it is', () => {
  const known = { concentration: figure(6.1, 5.6, 6.6), volume: figure(240, 225, 255), mark: 310 }
  expect(sayStanding(known, metric)).toBe('Stands at 6.1 % (5.6–6.6) in about 240 L of 310 L.')
  expect(sayStanding({ ...known, mark: null }, { units: 'us' })).toBe('Stands at 6.1 % (5.6–6.6) in about 63.4 gal.')
})

test('a volume that is known badly is said as a range', () => {
  expect(sayAbout(figure(240, 211.2, 268.8), metric)).toBe('about 240 L')
  expect(sayAbout(figure(240, 200, 285), metric)).toBe('200 to 285 L')
})

test('what is not known is said to be so', () => {
  expect(sayStanding({ concentration: null, volume: null, mark: null }, metric)).toBe(
    'Strength not known, level not known.',
  )
  expect(sayStanding({ concentration: null, volume: figure(150, 140, 160), mark: 200 }, metric)).toBe(
    'Strength not known; about 150 L of 200 L in it.',
  )
  expect(sayStanding({ concentration: figure(6.1, 5.6, 6.6), volume: null, mark: 200 }, metric)).toBe(
    'Stands at 6.1 % (5.6–6.6), level not known.',
  )
})

test('the drift of a week is said, and that there is none', () => {
  expect(sayDrift(6.1, 6.94, metric)).toBe('Left alone it stands at 6.9 % in a week.')
  expect(sayDrift(6.1, 6.12, metric)).toBe('Left alone it still stands at 6.1 % in a week.')
})

test('a crossing is said with its likely day and its earliest', () => {
  expect(sayCrossing(crossing(), seen)).toBe('It likely leaves its band on Monday, by Friday at the earliest.')
  expect(sayCrossing(crossing({ earliest: '2026-11-30T01:00:00Z' }), seen)).toBe('It likely leaves its band on Monday.')
})

test('a limit that may be crossed already is said so', () => {
  expect(sayCrossing(crossing({ earliest: '2026-11-25T10:00:00Z' }), seen)).toContain(
    'on Monday, perhaps today already.',
  )
})

test('a crossing that is less likely than not is said as a chance', () => {
  expect(sayCrossing(crossing({ probability: 0.3 }), seen)).toBe(
    'There is a chance of 3 in 10 that it leaves its band within six weeks, by Friday at the earliest.',
  )
})

test('a band that is left already is not left again; the suction that is reached is said', () => {
  expect(sayCrossing(crossing({ likely: seen.now, earliest: seen.now }), seen)).toBe('')
  expect(sayCrossing(crossing({ limit: 'volume.low', likely: seen.now, earliest: seen.now }), seen)).toContain(
    'suction',
  )
})

test('the next check says its day, and why it is sooner than the rule', () => {
  const monday = '2026-11-30T00:00:00+01:00'
  expect(sayNextCheck({ at: monday, because: 'rule' }, seen)).toBe('Next check on Monday.')
  expect(sayNextCheck({ at: monday, because: 'band' }, seen)).toContain(
    'Next check on Monday, before it may leave its band.',
  )
  expect(sayNextCheck({ at: '2026-11-25T00:00:00+01:00', because: 'rule' }, seen)).toBe('To be read today.')
  expect(sayNextCheck({ at: '2026-11-20T00:00:00+01:00', because: 'band' }, seen)).toContain('To be read today: it may')
  expect(sayNextCheck({ at: monday, because: 'never-read' }, seen)).toBe('Nobody has read its strength yet.')
})

test('hardness is said in whole ppm with its interval', () => {
  expect(sayHardness(figure(321.4, 270.2, 379.9), metric)).toBe('Hardness 321 ppm (270–380)')
})
