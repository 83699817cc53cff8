import { learn, speakAs } from '@sumpbook/fluid'
import { expect, test } from 'vitest'
import { catalogue } from '../words/de.ts'
import { sayThing } from './say-thing.ts'

const book = { shop: { units: 'metric' as const }, fluids: [{ id: 'f', name: 'Blue 40' }] }
const band = { limits: { concentration: { low: 6.5, target: 8, high: 10 } } }

test('a sump is said with its fluid, its mark, its place and its own band', () => {
  const sump = { id: 's', name: 'Mill 7', fluid: 'f', fillVolume: 300, place: 'bay C', ...band }
  expect(sayThing('sump', sump, book)).toBe('Blue 40 · mark 300 L · bay C · 6.5–10 %, target 8 %')
  // 302.83294272 L ÷ 3.785411784 L a US gallon (exact definition) = 80 gal
  expect(sayThing('sump', { ...sump, fillVolume: 302.83294272, limits: {} }, { ...book, shop: { units: 'us' } })).toBe(
    'Blue 40 · mark 80 gal · bay C',
  )
})

test('a hose meter is said with what one count is and the sump it fills', () => {
  const meter = { id: 'm', name: 'Hose', litresPerCount: 0.01, sump: 's', place: 'bay C' }
  const sumpList = [{ id: 's', name: 'Mill 7' }]
  expect(sayThing('meter', meter, { ...book, sumpList })).toBe('0.01 L a count · Mill 7 · bay C')
  // 0.01 L ÷ 3.785411784 L a US gallon (exact definition) = 0.0026417… gal
  expect(sayThing('meter', { ...meter, sump: null }, { ...book, shop: { units: 'us' } })).toBe(
    '0.0026 gal a count · bay C',
  )
})

test('what is not known of a thing is left out', () => {
  expect(sayThing('sump', { id: 's', name: 'Mill 7' }, book)).toBe('')
  expect(sayThing('water', { id: 'w', name: 'Well', kind: 'reverse-osmosis' }, book)).toBe('reverse osmosis')
  expect(sayThing('fluid', { id: 'f', name: 'Blue 40', class: 'semi-synthetic', brixChart: [] }, book)).toBe(
    'semi-synthetic · by its chart',
  )
})

test('in German a thing is said in German, with German number signs', () => {
  learn('de', catalogue)
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
  try {
    const bucket = { id: 'b', name: 'Eimer', capacity: 12.5, graduation: 0.5 }
    expect(sayThing('container', bucket, book)).toBe('12,5 L · Teilstriche alle 0,5 L')
  } finally {
    speakAs(() => ({ language: 'en', numbers: 'en' }))
  }
})
