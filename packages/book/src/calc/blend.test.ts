import { expect, test } from 'vitest'
import { blendCalculation } from './blend.ts'
import { runCalculation } from './calculation.ts'

const run = (input: unknown) => runCalculation(blendCalculation, input)
const faultsOf = (input: unknown) => {
  try {
    run(input)
  } catch (error) {
    return (error as { faults: unknown }).faults
  }
  return []
}
const tap = { id: 'tap', kind: 'tap', hardness: 300, chloride: 60, sulfate: 40, nitrate: 70, cost: 0.002 }
const ro = { id: 'ro', kind: 'reverse-osmosis', hardness: 10, chloride: 5, sulfate: 2, nitrate: 0, cost: 0.01 }

test('the cheapest blend inside the limits comes in parts that add up', () => {
  // nitrate 70 to 50: at least 28.6 % without nitrate
  const { output } = run({ waters: [tap, ro], limits: { nitrate: { high: 50 } }, volume: 200 })
  expect(output.parts).toMatchObject([
    { id: 'tap', fraction: expect.closeTo(50 / 70, 9) },
    { id: 'ro', fraction: expect.closeTo(20 / 70, 9), volume: expect.closeTo(400 / 7, 7) },
  ])
  expect(output).toMatchObject({ nitrate: expect.closeTo(50, 8), cost: expect.closeTo((200 * (0.1 + 0.2)) / 70, 9) })
})

test('a sump’s limits are divided by its cycles', () => {
  const bySump = run({ waters: [tap, ro], sumpLimits: { hardness: { high: 400 } }, cycles: 4, volume: 100 }).output
  const byWater = run({ waters: [tap, ro], limits: { hardness: { high: 100 } }, volume: 100 }).output
  expect(bySump.parts).toEqual(byWater.parts)
  expect(bySump.limits).toEqual({ hardness: { high: 100 } })
  expect(bySump.notes.join(' ')).toContain('4 cycles')
})

test('costPerLitre is the same as cost', () => {
  const waters = [tap, ro].map(({ cost, ...water }) => ({ ...water, costPerLitre: cost }))
  const limits = { hardness: { high: 100 } }
  expect(run({ waters, limits, volume: 1 }).output).toEqual(run({ waters: [tap, ro], limits, volume: 1 }).output)
})

test('softened water is left out and the note says why', () => {
  const softened = { ...tap, id: 'soft', kind: 'softened', hardness: 1, cost: 0.001 }
  const { output } = run({ waters: [softened, tap], limits: {}, volume: 1 })
  expect(output).toMatchObject({ parts: [{ id: 'tap' }], leftOut: ['soft'] })
  expect(output.notes.join(' ')).toContain('no routine top-up')
})

test('the answer in words has a line for each water', () => {
  const { output, input } = run({ waters: [tap, ro], limits: { hardness: { high: 155 } }, volume: 100 })
  const lines = blendCalculation.say(output, { units: 'metric' }, input)
  expect(lines.slice(0, 3)).toEqual([
    '50 L of tap (50.0 %)',
    '50 L of ro (50.0 %)',
    'hardness 155 mg/L, at most 155 allowed',
  ])
})

test('limits in conflict are each named with what can be reached', () => {
  const limits = { hardness: { low: 200 }, chloride: { high: 20 }, sulfate: { high: 100 } }
  expect(faultsOf({ waters: [tap, ro], limits, volume: 1 })).toEqual([
    {
      pointer: '/limits/hardness/low',
      found: 'at least 200 mg/L of hardness',
      expected: 'at least 89.1 mg/L, as near as these waters come while the other limits hold',
    },
    {
      pointer: '/limits/chloride/high',
      found: 'at most 20 mg/L of chloride',
      expected: 'at most 41 mg/L, as near as these waters come while the other limits hold',
    },
  ])
})

test('a conflict of a sump’s limits is told in the sump’s own figures', () => {
  expect(faultsOf({ waters: [ro], sumpLimits: { chloride: { high: 12 } }, cycles: 3, volume: 1 })).toEqual([
    {
      pointer: '/sumpLimits/chloride/high',
      found: 'at most 12 mg/L of chloride',
      expected: 'at most 15 mg/L, which is as near as these waters come',
    },
  ])
})

test.each([
  ['no limits of any kind', { waters: [tap], volume: 1 }, '/limits'],
  ['limits of both kinds', { waters: [tap], limits: {}, sumpLimits: {}, cycles: 2, volume: 1 }, '/limits'],
  ['a sump’s limits without cycles', { waters: [tap], sumpLimits: {}, volume: 1 }, '/cycles'],
  ['cycles below 1', { waters: [tap], sumpLimits: {}, cycles: 0.5, volume: 1 }, '/cycles'],
  [
    'a limit below 0',
    { waters: [tap], sumpLimits: { chloride: { high: -1 } }, cycles: 2, volume: 1 },
    '/sumpLimits/chloride/high',
  ],
  [
    'an unknown value under a limit',
    { waters: [{ id: 'a' }], limits: { chloride: { high: 1 } }, volume: 1 },
    '/waters/0/chloride',
  ],
  ['a cost for some waters only', { waters: [tap, { id: 'b' }], limits: {}, volume: 1 }, '/waters/1/cost'],
  ['one id twice', { waters: [tap, tap], limits: {}, volume: 1 }, '/waters/1/id'],
  ['softened water alone', { waters: [{ ...tap, kind: 'softened' }], limits: {}, volume: 1 }, '/waters'],
  ['a negative hardness', { waters: [{ ...tap, hardness: -1 }], limits: {}, volume: 1 }, '/waters/0/hardness'],
  ['a volume of nothing', { waters: [tap], limits: {}, volume: 0 }, '/volume'],
  [
    'ends the wrong way round',
    { waters: [tap], limits: { hardness: { low: 2, high: 1 } }, volume: 1 },
    '/limits/hardness/high',
  ],
])('%s is refused at its place', (_, input, pointer) => {
  expect(faultsOf(input)).toMatchObject([{ pointer, found: expect.any(String), expected: expect.any(String) }])
})
