import { expect, test } from 'vitest'
import { phVerdict } from '../guidance/ph-verdict.ts'
import { settledLimits } from '../guidance/settled-limits.ts'
import { slideRead } from '../guidance/slide-read.ts'
import { testInterval } from '../guidance/test-interval.ts'
import {
  sayAction,
  sayCalm,
  sayCourse,
  sayInterval,
  sayLimit,
  sayNitriteOver,
  sayPh,
  sayRefused,
  sayReported,
  sayRule,
  saySlide,
  saySource,
  sayTestsDue,
} from './guidance.ts'

test('a rule in a few words', () => {
  expect(sayRule({ kind: 'every', days: 1 })).toBe('every day')
  expect(sayRule({ kind: 'every', days: 7 })).toBe('every 7 days')
  expect(sayRule({ kind: 'every-unless-calm', days: 7, calm: { below: 10, inARow: 3, longest: 28 } })).toBe(
    'every 7 days; up to 28 days after 3 results in a row under 10 mg/L',
  )
  expect(sayRule({ kind: 'classes', classes: { reasonable: 1e4, poor: 1e6 } })).toBe(
    'under 10,000 good, from there reasonable, from 1,000,000 poor (CFU/mL)',
  )
  expect(sayRule({ kind: 'ends', low: 8.5, unit: '' })).toBe('at least 8.5')
  expect(sayRule({ kind: 'ends', high: 20, unit: 'mg/L' })).toBe('at most 20 mg/L')
  expect(sayRule({ kind: 'fall', by: 0.5, asks: 'act' })).toBe('fall of more than 0.5 from the fresh fill: act')
  expect(sayRule({ kind: 'no-figure', about: 'classes' })).toBe('sets no figure')
})

test('figures inside the words of a rule are written as the reader writes figures', () => {
  const strips = { action: 'Use strips in steps of {low} to {high}.', figures: { low: 0.2, high: 0.3 } }
  expect(sayAction(strips)).toBe('Use strips in steps of 0.2 to 0.3.')
  expect(sayAction(strips, { locale: 'de-DE' })).toBe('Use strips in steps of 0,2 to 0,3.')
  const mist = { kind: 'ends', high: 0.4, unit: 'mg/m³ ({total} in total)', figures: { total: 0.5 } } as const
  expect(sayRule(mist, { locale: 'es-ES' })).toBe('at most 0,4 mg/m³ (0,5 in total)')
  expect(sayAction({ action: 'Change the charge and clean out.' })).toBe('Change the charge and clean out.')
})

test('a source with its section, edition and the day it was read', () => {
  const source = {
    document: 'TRGS 611',
    section: '5.3',
    edition: 'May 2007',
    readOn: '2026-11-28',
    tag: 'read',
  } as const
  expect(saySource(source)).toBe('TRGS 611, 5.3, edition May 2007; read 28 Nov 2026')
  expect(saySource({ ...source, readOn: null, tag: 'from memory' })).toBe(
    'TRGS 611, 5.3, edition May 2007; from memory, not read again',
  )
})

test('an interval of the shop that is too long is said not to count', () => {
  expect(sayInterval(testInterval({ guidance: 7, shop: 14 }), 'ph', 'the pack')).toBe(
    'pH every 7 days, by the pack. The shop’s own 14 days are longer and do not count.',
  )
  expect(sayInterval(testInterval({ guidance: null, shop: null }), 'hardness', '')).toBe(
    'Hardness: nobody sets an interval.',
  )
})

test('tests that are due of one sump are one sentence', () => {
  expect(sayTestsDue(['ph', 'nitrite'], 'Mill 7')).toBe('pH and nitrite of Mill 7 are due')
  expect(sayTestsDue(['bacteria'], 'Mill 7')).toBe('Dip slide of Mill 7 is due')
})

test('pH in words, to the tenth', () => {
  const at = (value: number) => ({ low: value, high: value })
  const asked = { fresh: at(9.2), strength: null, act: 0.5, change: 1, floor: 8.5 }
  expect(sayPh(phVerdict({ ...asked, now: at(8.6) }))).toBe(
    'pH stands 0.6 under its fresh value. Find the cause before anything is added.',
  )
  expect(sayPh(phVerdict({ ...asked, now: at(8.4) }))).toBe(
    'pH is under its floor of 8.5, 0.8 under its fresh value. Find the cause before anything is added.',
  )
  expect(sayPh(phVerdict({ ...asked, now: at(8.9), fresh: null }))).toMatch(/^No pH was read soon after the charge/)
})

test('figures and classes', () => {
  expect(sayReported({ low: 1000, high: 10_000 }, 0)).toBe('1000 to 10,000')
  expect(sayReported({ below: 10 }, 0)).toBe('under 10')
  expect(sayReported({ atLeast: 1e7 }, 0)).toBe('10,000,000 or more')
})

test('a slide, with what its time is worth', () => {
  const how = { window: { fromHours: 24, toHours: 72 }, classes: { reasonable: 1e4, poor: 1e6 } }
  const said = (count: number, hours: number) => saySlide(count, slideRead(count, hours, how))
  expect(said(1e5, 48)).toBe('100,000 CFU/mL: reasonable.')
  expect(said(1e3, 20)).toBe('1000 CFU/mL. Read before its time: it says nothing yet. Read it again within its hours.')
  expect(said(1e6, 20)).toBe(
    '1,000,000 CFU/mL: at least poor. Read before its time: what is there counts, more may come.',
  )
  expect(said(1e6, 100)).toBe(
    '1,000,000 CFU/mL: poor. Read after its window: it may have overgrown and counts as at most that. Treat it as it reads, and take a fresh slide today.',
  )
})

test('nitrite over its limit', () => {
  expect(sayNitriteOver(25, 20, 'Change it.')).toBe('Nitrite 25 mg/L, over the limit of 20 mg/L. Change it.')
})

test('how a series moves', () => {
  const rising = { slope: 10, direction: 'rising' } as const
  expect(sayCourse(rising, { unit: 'mg/L', isCount: false })).toBe('In this charge it is rising by 10 mg/L a week.')
  expect(sayCourse({ slope: -1, direction: 'falling' }, { unit: 'CFU/mL', isCount: true })).toBe(
    'In this charge it is falling by a factor of 10 a week.',
  )
  // log10 of 1.03 is 0.0128: so small a factor, or less than half a hundredth, would be said as none at all.
  expect(sayCourse({ slope: 0.004, direction: 'rising' }, { unit: 'mg/L', isCount: false })).toContain('hardly changes')
  expect(sayCourse({ slope: 0.0128, direction: 'rising' }, { unit: 'CFU/mL', isCount: true })).toContain(
    'hardly changes',
  )
  expect(sayCourse({ slope: -0.006, direction: 'falling' }, { unit: '', isCount: false })).toContain('falling by 0.01')
  expect(sayCourse({ ...rising, direction: 'none' }, { unit: '', isCount: false })).toContain('only scatters')
  expect(sayCourse(null, { unit: '', isCount: false })).toContain('Too few')
})

test('why an interval has grown or not', () => {
  const rule = { days: 7, calm: { below: 10, inARow: 3, longest: 28 } }
  expect(sayCalm({ days: 28, run: 4, because: 'calm' }, rule)).toBe('The last 4 results in a row were under 10 mg/L.')
  expect(sayCalm({ days: 7, run: 0, because: 'over' }, rule)).toBe('The last result was not under 10 mg/L.')
  expect(sayCalm({ days: 7, run: 1, because: 'too-few' }, rule)).toBe(
    'One result in a row under 10 mg/L; 3 let it grow longer.',
  )
})

test('a limit, and one that was refused', () => {
  const high = { quantity: 'nitrite', end: 'high', source: 'a rule' } as const
  const [limit] = settledLimits([
    { ...high, value: 20, level: 'guidance', binding: true },
    { ...high, value: 50, level: 'sump', binding: false },
  ])
  expect(sayLimit(limit!)).toBe('Nitrite: at most 20 mg/L')
  expect(sayRefused(limit!)).toBe('This sump asks for 50 mg/L, which is looser: it does not count.')
})
