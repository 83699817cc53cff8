import { expect, test } from 'vitest'
import { runCalculation } from './calculation.ts'
import { premixCalculation } from './premix.ts'

const run = (input: unknown) => runCalculation(premixCalculation, input)
const faultsOf = (input: unknown) => {
  try {
    run(input)
  } catch (error) {
    return (error as { faults: unknown }).faults
  }
  return []
}
const needs = [
  { sump: 'mill', volume: 20, strength: 4, sumpVolume: 100 },
  { sump: 'lathe', volume: 20, strength: 6, sumpVolume: 100 },
  { sump: 'saw', volume: 40, strength: 2, sumpVolume: 200 },
]

test('few strengths serve many sumps', () => {
  const { output } = run({ needs, strengths: 2 })
  // 2 and 4 make 3 and miss by 0.2 each, as 4 and 6 would.
  expect(output.batches).toHaveLength(2)
  expect(output.worst).toBeCloseTo(0.2, 12)
  expect(output.errors.map(({ sump }) => sump)).toEqual(['mill', 'lathe', 'saw'])
})

test('one strength is the weighted mean', () => {
  const { output, input } = run({ needs, strengths: 1 })
  expect(output.batches).toEqual([{ strength: 4, volume: 80, sumps: ['mill', 'lathe', 'saw'] }])
  expect(premixCalculation.say(output, { units: 'metric' }, input).slice(0, 2)).toEqual([
    '80 L at 4 % (3.2 L concentrate): mill, lathe, saw',
    'The sump farthest from its target misses it by 0.40 %.',
  ])
})

test('concentrate into water is said with it', () => {
  expect(run({ needs, strengths: 1 }).output.cautions.join(' ')).toContain('Concentrate goes into water')
})

test.each([
  ['no need', { needs: [], strengths: 1 }, '/needs'],
  ['half a strength', { needs, strengths: 1.5 }, '/strengths'],
  ['no strength', { needs, strengths: 0 }, '/strengths'],
  ['a pour larger than its sump', { needs: [{ ...needs[0], sumpVolume: 19 }], strengths: 1 }, '/needs/0/sumpVolume'],
  ['a missing volume', { needs: [{ sump: 'a', strength: 4, sumpVolume: 100 }], strengths: 1 }, '/needs/0/volume'],
])('%s is refused at its place', (_, input, pointer) => {
  expect(faultsOf(input)).toMatchObject([{ pointer, found: expect.any(String), expected: expect.any(String) }])
})
