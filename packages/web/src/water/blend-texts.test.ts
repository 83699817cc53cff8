import { expect, test } from 'vitest'
import { readLimits, readWater, unknownFaults } from './blend-texts.ts'
import { waterTexts } from './water-texts.ts'

const none = { hardnessLow: '', hardness: '', chloride: '', sulfate: '', nitrate: '', cycles: '', volume: '' }

test('a water’s price is shown for the shop’s unit and reckoned with by the litre', () => {
  const water = { id: 'tap', name: 'Tap', hardness: 260, costPerLitre: 0.004 }
  const texts = waterTexts(water, 'us')
  // 0.004 × 3.785411784 = 0.01514
  expect(texts).toMatchObject({ hardness: '260', chloride: '', cost: '0.01514' })
  expect(readWater('tap', texts, 'us').values.cost).toBeCloseTo(0.004, 5)
})

test('limits that are not typed are none, a floor above its ceiling is a fault', () => {
  expect(readLimits({ ...none, volume: '100' }, 'metric')).toMatchObject({ limits: {}, volume: 100, faults: {} })
  expect(readLimits({ ...none, hardnessLow: '80', chloride: '30' }, 'metric').limits).toEqual({
    hardness: { low: 80 },
    chloride: { high: 30 },
  })
  expect(readLimits({ ...none, hardnessLow: '151', hardness: '150' }, 'metric').faults.hardnessLow).toBeDefined()
  expect(readLimits({ ...none, hardnessLow: '150', hardness: '150' }, 'metric').faults).toEqual({})
  expect(readLimits({ ...none, cycles: '0.9' }, 'metric').faults.cycles).toBeDefined()
})

test('what is limited is asked for at every water, and a price at all or none', () => {
  const read = (id: string, more: object) =>
    readWater(id, { hardness: '', chloride: '', sulfate: '', nitrate: '', cost: '', ...more }, 'metric')
  const faults = unknownFaults([read('a', { hardness: '10', cost: '1' }), read('b', {})], { hardness: { high: 100 } })
  expect(faults.get('a')).toEqual({})
  expect(Object.keys(faults.get('b')!)).toEqual(['hardness', 'cost'])
})
