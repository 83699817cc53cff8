import { expect, test } from 'vitest'
import { runCalculation } from './calculation.ts'
import { treatmentCalculation } from './treatment.ts'

const run = (input: unknown) => runCalculation(treatmentCalculation, input)
const faultsOf = (input: unknown) => {
  try {
    run(input)
  } catch (error) {
    return (error as { faults: unknown }).faults
  }
  return []
}
const unit = { litresPerDay: 400, price: 3000, recovery: 0.75, rejection: 0.97, upkeepPerYear: 200 }
const shop = {
  demand: 200,
  tap: { tds: 300, hardness: 250, costPerLitre: 0.003 },
  unit,
  polisher: { resinLitres: 10, capacityPerLitre: 20, price: 80 },
  fluidSaving: 1500,
}

test('size, cost, life of resin and payback come of the shop’s own figures', () => {
  // resin: 200 g at 9 mg/L; cost: 0.004 + 800/73000 + 80/22222; running: 73 + 200 + 262.8
  const { output } = run(shop)
  expect(output).toMatchObject({
    demand: 200,
    capacityNeeded: 300,
    resinLife: expect.closeTo(200_000 / 9, 6),
    costPerLitre: expect.closeTo(0.004 + 800 / 73_000 + 0.0036, 10),
    paybackYears: expect.closeTo(3000 / (1500 - 73 - 200 - 262.8), 8),
    permeate: { tds: expect.closeTo(9, 9) },
    concentrate: { tds: expect.closeTo(1173, 8) },
  })
})

test('the demand is what the sumps lose', () => {
  const { demand: _, ...rest } = shop
  const sumps = [
    { evaporation: 90, carryOff: 30 },
    { evaporation: 60, carryOff: 20 },
  ]
  expect(run({ ...rest, sumps }).output).toEqual(run(shop).output)
})

test('shares and percentages mean the same', () => {
  const inPercent = { ...shop, unit: { ...unit, recovery: 75, rejection: 97 } }
  expect(run(inPercent).output.costPerLitre).toBeCloseTo(run(shop).output.costPerLitre, 12)
})

test('a unit too small and solids unknown are noted', () => {
  const small = { ...shop, tap: { hardness: 250, costPerLitre: 0.003 }, unit: { ...unit, litresPerDay: 250 } }
  const { notes, resinLife } = run(small).output
  expect(notes.join(' ')).toContain('storage must carry the difference')
  expect(notes.join(' ')).toContain('by the hardness alone')
  expect(resinLife).toBeCloseTo(200_000 / 7.5, 6)
})

test('the answer in words', () => {
  const { output, input } = run(shop)
  expect(treatmentCalculation.say(output, { units: 'metric' }, input).slice(0, 5)).toEqual([
    '200 L a day on the mean, 300 L on the worst day.',
    'A litre costs 0.0186.',
    '66.7 L a day go to the drain.',
    'A filling of resin lasts for 22,222 L.',
    'It has paid after 3.1 years.',
  ])
})

test.each([
  ['neither demand nor sumps', { ...shop, demand: undefined }, '/demand'],
  ['both of them', { ...shop, sumps: [{ evaporation: 1, carryOff: 1 }] }, '/demand'],
  ['neither unit nor polisher', { demand: 1, tap: shop.tap }, '/unit'],
  ['a demand of nothing', { ...shop, demand: 0 }, '/demand'],
  ['a recovery of nothing', { ...shop, unit: { ...unit, recovery: 0 } }, '/unit/recovery'],
  ['a recovery above all', { ...shop, unit: { ...unit, recovery: 101 } }, '/unit/recovery'],
  ['a peak below the mean', { ...shop, peak: 0.5 }, '/peak'],
  [
    'a sump that gains',
    { ...shop, demand: undefined, sumps: [{ evaporation: -1, carryOff: 5 }] },
    '/sumps/0/evaporation',
  ],
])('%s is refused at its place', (_, input, pointer) => {
  expect(faultsOf(input)).toMatchObject([{ pointer, found: expect.any(String), expected: expect.any(String) }])
})
