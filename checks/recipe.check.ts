/**
 * The recipe against arithmetic that others have published for mixing two strengths.
 *
 * Alligation of the pharmacist's desk is the same sum as a top-up: what is there, what is added, what results. Cases read in
 * copies of pharmacy arithmetic teaching material: 70 % and 20 % to 30 % is 1 part to 4; 50 % and 100 % to 20 mL of 70 %
 * is 12 mL and 8 mL. US Army subcourse MD0802, "Pharmaceutical calculations II" (question read in a copy, answer computed
 * here): 300 mL of 70 % to 40 % takes 225 mL of water. Sump forms: plain mass balance, the sums shown. All to 1e-9, the sums are
 * exact; 8.5106 L to the four decimals given.
 *
 * Common practice, no source: 6 to 10 % suits most general work, 8 % is its middle; a factor of 1 reads 8 °Brix at 8 %.
 */
import { expect, test } from 'vitest'
import { concentrationFromBrix, pourWays, topUp } from '../packages/fluid/src/index.ts'

const neat = { maxStrength: 100 }

test('1 part of 70 % becomes 5 parts of 30 % with 20 % (alligation 1 : 4)', () => {
  const { add } = topUp({ volume: 1, concentration: 70, fillVolume: 5, target: 30 }, neat)
  expect(add?.strength).toBeCloseTo(20, 9)
  expect(add?.volume).toBeCloseTo(4, 9)
})

test('12 mL of 50 % become 20 mL of 70 % with 8 mL of 100 %', () => {
  const { add, result } = topUp({ volume: 12, concentration: 50, fillVolume: 20, target: 70 }, neat)
  expect(add).toMatchObject({ volume: 8, strength: 100 })
  expect(result?.concentration).toBeCloseTo(70, 9)
})

test('300 mL of 70 % become 40 % with 225 mL of water (MD0802)', () => {
  const { action, add } = topUp({ volume: 300, concentration: 70, fillVolume: 525, target: 40 }, neat)
  expect(action).toBe('water-only')
  expect(add?.water).toBeCloseTo(225, 9)
})

test('150 L at 6.5 % become 200 L at 6 % with 50 L at 4.5 % (9.75 + 2.25 = 12 L of concentrate)', () => {
  expect(topUp({ volume: 150, concentration: 6.5, fillVolume: 200, target: 6 }).add).toMatchObject({
    volume: 50,
    strength: 4.5,
  })
})

test('400 L at 4 % become 6 % with 8.5106 L of neat concentrate (2 × 400 / 94)', () => {
  const { add } = topUp({ volume: 400, concentration: 4, fillVolume: 400 + 800 / 94, target: 6 }, neat)
  expect(add?.volume).toBeCloseTo(8.5106, 4)
  expect(add?.strength).toBeCloseTo(100, 6)
})

test('400 L at 9 % become 6 % with 200 L of water', () => {
  expect(topUp({ volume: 400, concentration: 9, fillVolume: 600, target: 6 })).toMatchObject({
    action: 'water-only',
    add: { water: 200 },
  })
})

test('the draw-off of a full, lean sump is that of the drain-and-fill sum of cooling systems', () => {
  // To bring V litres from a % to b % with a concentrate of s %, V (b − a) / (s − a) are drained: antifreeze tables use the same sum.
  const [volume, lean, target, strong] = [16, 20, 50, 100] as const
  const { drawOff } = topUp(
    { volume, concentration: lean, fillVolume: volume, target, band: { low: 45, high: 55 } },
    neat,
  )
  expect(drawOff).toBeCloseTo((volume * (target - lean)) / (strong - lean), 9)
})

test('two mixes that stand ready are shared out by alligation: 3 % and 8 % to 4.5 % is 3.5 : 1.5', () => {
  const sump = { volume: 150, concentration: 6.5, fillVolume: 200, target: 6 }
  const way = pourWays(sump, { mixerStrengths: [3, 8], leanest: 1 }).find(({ parts }) => parts.length === 2)!
  expect(way.parts[0]!.volume / way.parts[1]!.volume).toBeCloseTo(3.5 / 1.5, 9)
})

test('a factor of 1 reads 8 °Brix at 8 %, the middle of 6 to 10 % (common practice)', () => {
  const { concentration } = concentrationFromBrix({ brix: 8, factor: 1 })
  expect(topUp({ volume: 200, concentration, fillVolume: 200, target: 8, band: { low: 6, high: 10 } }).action).toBe(
    'none',
  )
})
