import { learn, pourWays, speakAs, type Way } from '@sumpbook/fluid'
import { afterEach, expect, test } from 'vitest'
import { catalogue as german } from '../words/de.ts'
import { sayLanding, sayWay } from './say-way.ts'

afterEach(() => speakAs(() => ({ language: 'en', numbers: 'en' })))

const names = {
  water: 'Deionised water',
  settings: [{ mixer: 'Mixing station', dial: 6, percent: 10 }],
  premixes: { a: 'premix 1' },
}
const reader = { units: 'metric' } as const

// 150 L at 6 % hold 9 L; 200 L at 7 % hold 14: 5 L in 50 L are 10 %, which is dial 6.
test('a way names its liquids in the order of pouring, the mixer with its dial', () => {
  const sump = { volume: 150, concentration: 6, fillVolume: 200, target: 7, band: { low: 6, high: 8 } }
  const [best] = pourWays(sump, { mixerStrengths: [10] })
  expect(sayWay(best!, names, reader)).toBe('50 L from mixing station at 10 %, dial 6')
  expect(sayLanding(best!, { target: 7, band: sump.band }, reader)).toBe('7.0 %, on the target')
  // Premix of 20 % halves with water.
  const [pair] = pourWays(sump, { premixes: [{ id: 'a', strength: 20, volume: 30 }] })
  expect(sayWay(pair!, names, reader)).toBe('25 L of deionised water, then 25 L of premix 1 at 20 %')
})

test.each([
  [7.6, true, 'above the target', '7.6 %, 0.6 above the target'],
  [6.5, true, 'under the target', '6.5 %, 0.5 under the target'],
  [5.5, false, 'under the band', '5.5 %, under its band'],
  [9, false, 'above the band', '9.0 %, above its band'],
])('%f lands %s', (concentration, inBand, _, words) => {
  const result = { volume: 200, concentration, low90: concentration, high90: concentration, hardness: null }
  const way: Way = { parts: [], result, inBand, offTarget: Math.abs(concentration - 7), fuss: 1 }
  expect(sayLanding(way, { target: 7, band: { low: 6, high: 8 } }, reader)).toBe(words)
})

test('in German a way says its liquids in that order too, and names as they were written', () => {
  learn('de', german)
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
  const sump = { volume: 150, concentration: 6, fillVolume: 200, target: 7, band: { low: 6, high: 8 } }
  const [best] = pourWays(sump, { mixerStrengths: [10] })
  expect(sayWay(best!, names, reader)).toBe('50 L aus Mixing station mit 10 %, Stellung 6')
  const [pair] = pourWays(sump, { premixes: [{ id: 'a', strength: 20, volume: 30 }] })
  expect(sayWay(pair!, names, reader)).toBe('25 L Deionised water, dann 25 L premix 1 mit 20 %')
  expect(sayLanding(best!, { target: 7, band: sump.band }, reader)).toBe('7,0 %, genau am Sollwert')
})
