import { expect, test } from 'vitest'
import { volumeToPour } from './volume-to-pour.ts'

const figure = (mean: number, sd: number) => ({ mean, sd, low90: mean - 1.645 * sd, high90: mean + 1.645 * sd })
const bench = { minVolume: 50 }

// 150 L ± 10 % under a mark known to 8 %: √(0.1² − 0.08²) = 0.06, 9 L.
test('the doubt of the mark is in the volume and the room alike, and moves no pour', () => {
  expect(volumeToPour(figure(150, 15), figure(200, 16), bench)?.sd).toBeCloseTo(9, 10)
  expect(volumeToPour(figure(150, 15), figure(200, 40), bench)?.sd).toBe(0)
})

test('a volume known worse than to a tenth is none to pour by', () => {
  expect(volumeToPour(figure(150, 14.9), null, bench)?.sd).toBeCloseTo(14.9, 10)
  expect(volumeToPour(figure(150, 15.1), null, bench)).toBeNull()
})

test('under the suction it is filled however badly the level is known', () => {
  expect(volumeToPour(figure(45, 9), null, bench)).not.toBeNull()
  expect(volumeToPour(figure(45, 9), null, { minVolume: null })).toBeNull()
})
