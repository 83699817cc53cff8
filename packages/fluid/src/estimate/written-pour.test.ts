import { expect, test } from 'vitest'
import { written } from './priors.ts'
import { pourOf } from './written-pour.ts'

test('a mix brings the minerals of the water in it, and is known to a share of it', () => {
  // 10 %: nine tenths of the water, each known to a share and 1 mg/L.
  const pour = pourOf({ strength: 10, water: { hardness: 200, chloride: 50 } })
  expect(pour).toMatchObject({ strength: 10, strengthSd: written.strength * 10, mixed: true })
  expect(pour.hardness).toBeCloseTo(180, 12)
  expect(pour.hardnessSd).toBeCloseTo(written.water * 180 + 1, 12)
  expect(pour.chloride).toBeCloseTo(45, 12)
  expect(pour.chlorideSd).toBeCloseTo(written.water * 45 + 1, 12)
})

test('water that nobody measured may be soft or hard', () => {
  const pour = pourOf({ strength: 0, water: { hardness: null, chloride: null } })
  expect(pour).toMatchObject({ hardness: 150, hardnessSd: 100, chloride: 40, chlorideSd: 40, strengthSd: 0 })
})

test('concentrate is no mix and brings no water', () => {
  const pour = pourOf({ strength: 100, water: { hardness: 200, chloride: 50 } })
  expect(pour).toMatchObject({ mixed: false, hardness: 0, chloride: 0 })
  expect(pourOf({ strength: 99.9, water: { hardness: 200, chloride: 50 } }).mixed).toBe(true)
})
