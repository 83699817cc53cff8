import { expect, test } from 'vitest'
import { someSump } from './testing.ts'
import { inTrueLitres } from './true-litres.ts'

const figure = (mean: number, low90: number, high90: number, sd: number) => ({ mean, sd, low90, high90 })

// A mark of 200 L that is √(162 · 200) = 180 L; its 10 % and the volume's √(0.1² + 0.03²) leave 3 % of 90 L: 2.7 L.
test('a plate that says too much is believed less, and the level is known beside it', () => {
  const mark = figure(180, 162, 200, 18)
  const volume = figure(90, 75, 105, 90 * Math.hypot(0.1, 0.03))
  const sump = inTrueLitres({ ...someSump, mark, volume })
  expect(sump.bench.fillVolume).toBeCloseTo(180, 9)
  expect(sump.volume!.sd).toBeCloseTo(2.7, 9)
})

test('nothing learnt changes nothing', () => {
  const sump = { ...someSump, mark: null, volume: null }
  expect(inTrueLitres(sump)).toEqual(sump)
})
